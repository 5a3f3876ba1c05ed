import type { Pcm } from '../ports.ts';
import { toS16le } from './s16le.ts';

const LENGTH_OPEN = 0xffff_ffff;
const HEADER_BYTES = 44;

/** A whole WAV file: 16 bit mono PCM; limits and rounding as in `toS16le`. */
export function encodeWav(sound: Pcm): Uint8Array {
  const data = toS16le(sound.samples);
  const bytes = new Uint8Array(HEADER_BYTES + data.length);
  bytes.set(wavHeader(sound.sampleRateHz, data.length));
  bytes.set(data, HEADER_BYTES);
  return bytes;
}

/** The 44 bytes before 16 bit mono sound; without `dataBytes` the length is left open, for a stream. */
export function wavHeader(sampleRateHz: number, dataBytes?: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(HEADER_BYTES));
  const bytes = new Uint8Array(view.buffer);
  const text = new TextEncoder();
  bytes.set(text.encode('RIFF'), 0);
  view.setUint32(4, dataBytes === undefined ? LENGTH_OPEN : HEADER_BYTES - 8 + dataBytes, true);
  bytes.set(text.encode('WAVEfmt '), 8);
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRateHz, true);
  view.setUint32(28, sampleRateHz * 2, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  bytes.set(text.encode('data'), 36);
  view.setUint32(40, dataBytes ?? LENGTH_OPEN, true);
  return bytes;
}
