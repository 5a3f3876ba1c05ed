import { VoiceError } from '../errors.ts';
import type { Pcm } from '../ports.ts';
import { sampleReader } from './wav-samples.ts';

/*
 * Written here because the two libraries in use elsewhere fail on bad input (tried with wavefile 11.0.0 and
 * node-wav 0.0.2): the first plays a broken-off file, a rate of zero and a compressed format without a word,
 * the second breaks with a TypeError or claims two thousand million samples that are not there.
 */

const LOWEST_RATE_HZ = 8_000;
const HIGHEST_RATE_HZ = 192_000;
const FORMAT_PCM = 1;
const FORMAT_FLOAT = 3;
const FORMAT_EXTENSIBLE = 0xfffe;
/** Programs that write to a pipe cannot go back to fill in the length and leave one of these, or zero. */
const LENGTH_UNKNOWN_FROM = 0x7fff_0000;

interface Format {
  readonly code: number;
  readonly channels: number;
  readonly sampleRateHz: number;
  readonly frameBytes: number;
  readonly bitsPerSample: number;
}

/** What a WAV file says about itself, with its sound mixed down to one channel. */
export interface WavContent extends Pcm {
  readonly channels: number;
  readonly bitsPerSample: number;
}

/**
 * Reads a RIFF/WAVE file: 8, 16, 24 or 32 bit PCM or 32 bit float, 8 to 192 kHz, mono or stereo (mixed down).
 * A length left open by a program that wrote to a pipe is taken as "to the end".
 * @param name how the file is called in the error's sentence.
 * @throws VoiceError in one sentence when the bytes are anything else, hold no sound or break off.
 */
export function decodeWav(bytes: Uint8Array, name: string): WavContent {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const refuse = (what: string): never => {
    throw new VoiceError('soundUnusable', `${name} ${what}.`);
  };
  if (view.byteLength < 12 || tag(view, 0) !== 'RIFF' || tag(view, 8) !== 'WAVE') {
    return refuse('is not a WAV file (no RIFF/WAVE header at its start); give a WAV recording');
  }
  let format: Format | undefined;
  for (let at = 12; at + 8 <= view.byteLength; ) {
    const id = tag(view, at);
    const length = view.getUint32(at + 4, true);
    const start = at + 8;
    const present = view.byteLength - start;
    if (id === 'fmt ') {
      if (length < 16 || length > present)
        return refuse(`has a damaged format chunk at byte ${at}; record it again`);
      format = readFormat(view, start, length);
    } else if (id === 'data') {
      if (!format)
        return refuse(`has sound before its format at byte ${at}; save it again from a sound editor`);
      checkFormat(format, refuse);
      const open = length === 0 || length >= LENGTH_UNKNOWN_FROM;
      if (!open && length > present) {
        return refuse(
          `breaks off: ${present} of ${length} bytes of sound are there; copy or record it again`,
        );
      }
      const samples = mixDown(
        new DataView(view.buffer, view.byteOffset + start, open ? present : length),
        format,
      );
      if (samples.length === 0) return refuse('holds no sound (zero samples); record it again');
      const { sampleRateHz, channels, bitsPerSample } = format;
      return { samples, sampleRateHz, channels, bitsPerSample };
    }
    at = start + length + (length % 2);
  }
  return refuse('has no sound in it (no data chunk before its end); copy or record it again');
}

const tag = (view: DataView, at: number): string =>
  String.fromCharCode(view.getUint8(at), view.getUint8(at + 1), view.getUint8(at + 2), view.getUint8(at + 3));

function readFormat(view: DataView, at: number, length: number): Format {
  const code = view.getUint16(at, true);
  return {
    code: code === FORMAT_EXTENSIBLE && length >= 26 ? view.getUint16(at + 24, true) : code,
    channels: view.getUint16(at + 2, true),
    sampleRateHz: view.getUint32(at + 4, true),
    frameBytes: view.getUint16(at + 12, true),
    bitsPerSample: view.getUint16(at + 14, true),
  };
}

function checkFormat(format: Format, refuse: (what: string) => never): void {
  const { code, channels, sampleRateHz, frameBytes, bitsPerSample } = format;
  const known = code === FORMAT_FLOAT ? [32] : code === FORMAT_PCM ? [8, 16, 24, 32] : [];
  if (known.length === 0) refuse(`is compressed or of an unknown kind (format ${code}); save it as PCM`);
  if (!known.includes(bitsPerSample)) refuse(`has ${bitsPerSample} bits a sample; save it as 16 bit PCM`);
  if (channels !== 1 && channels !== 2) refuse(`has ${channels} channels; save it as mono or stereo`);
  if (sampleRateHz < LOWEST_RATE_HZ || sampleRateHz > HIGHEST_RATE_HZ) {
    refuse(`claims ${sampleRateHz} samples a second (allowed: 8000 to 192000); save it again at 16000`);
  }
  if (frameBytes !== (channels * bitsPerSample) / 8) {
    refuse(`contradicts itself (${frameBytes} bytes for ${channels} x ${bitsPerSample} bits); save it again`);
  }
}

function mixDown(data: DataView, format: Format): Float32Array {
  const { channels, bitsPerSample, frameBytes } = format;
  const read = sampleReader(bitsPerSample, format.code === FORMAT_FLOAT);
  const samples = new Float32Array(Math.floor(data.byteLength / frameBytes));
  for (let frame = 0; frame < samples.length; frame++) {
    let sum = 0;
    for (let channel = 0; channel < channels; channel++) {
      sum += read(data, frame * frameBytes + (channel * bitsPerSample) / 8);
    }
    samples[frame] = sum / channels;
  }
  return samples;
}
