import type { Face } from '../face/face.ts';
import { forgetPairing } from '../remote/pairing.ts';

/**
 * What ends the pairing of this device, here and on the laptop, and leaves; nothing where there is none, or where another
 * tab of this browser has the line: its pairing is the same one.
 */
export function unpairing(face: Face, leave: () => void): (() => void) | undefined {
  const { bay } = face.state();
  const deeds = face.bay;
  if (!bay || !deeds || bay.link.refusal?.code === 'replaced') return undefined;
  return () => {
    if (bay.device) deeds.letGo(bay.device);
    forgetPairing();
    leave();
  };
}
