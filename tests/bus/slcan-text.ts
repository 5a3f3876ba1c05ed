import { bytesToHex, toHex } from '../../src/bus/formats/hex.ts';
import type { CanFrame } from '../../src/bus/frame.ts';

/** The message, carriage return included, that an adapter gives for this frame. */
export function slcanText(frame: CanFrame): string {
  const letter = frame.remote ? 'r' : 't';
  const head = frame.extended ? letter.toUpperCase() + toHex(frame.id, 8) : letter + toHex(frame.id, 3);
  return `${head}${frame.data.length}${bytesToHex(frame.data)}\r`;
}
