import type { Face } from '../face/face.ts';

/**
 * Acts each time that a line to the laptop is there: now, if it is, and after each break.
 * @returns what ends that
 */
export function whenConnected(face: Face, act: () => void): () => void {
  let before = '';
  const look = () => {
    const now = face.state().bay?.link.state ?? '';
    if (now === 'connected' && before !== now) act();
    before = now;
  };
  look();
  return face.watch(look);
}
