import { execFile } from 'node:child_process';
import { createWriteStream, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { decodeWav } from '../src/voice/audio/wav.ts';
import { chanceOf } from './chance.ts';
import { readTexts, type TrainingText } from './texts-file.ts';

const run = promisify(execFile);
const [, , folder = '.cache/acoustic-model', seed = '11252026'] = process.argv;
const { random, oneOf } = chanceOf(Number(seed));
/** LANGUAGE=fr: flite has no French. */
const inFrench = process.env.LANGUAGE === 'fr';
const between = (low: number, high: number) => low + (high - low) * random();

/** Two voices built from recordings; the others are kept for choosing settings and for the report. */
const recorded = ['slt', 'rms'];
const accents = [
  'en-us',
  'en-us',
  'en-us',
  'en-gb',
  'en-gb-x-rp',
  'en-gb-scotland',
  'en-gb-x-gbcwmd',
  'en-029',
  'en-us-nyc',
];
const frenchAccents = ['fr-fr', 'fr-fr', 'fr-be', 'fr-ch'];
const variants =
  'Alex Alicia Andrea Andy Annie Denis Diogo Gene Gene2 Henrique Hugo Lee Marco Mario Michael Mike adam anika antonio aunty belinda benjamin boris caleb david ed edward edward2 f1 f2 f3 f4 f5 iven iven2 john kaukovalta klatt klatt2 klatt3 linda m1 m2 m3 m4 m5 m6 m7 m8 marcelo max michel miguel pablo paul pedro quincy rob robert sandro shelby steph steph2 travis victor zac'.split(
    ' ',
  );

interface Command {
  readonly voice: string;
  readonly program: string;
  readonly args: (output: string, text: string) => readonly string[];
}

function fliteCommand(): Command {
  const voice = oneOf(recorded);
  const stretch = between(0.75, 1.25).toFixed(2);
  const base = { slt: 180, rms: 100 }[voice] ?? 110;
  const pitch = (base * between(0.85, 1.2)).toFixed(0);
  return {
    voice: `flite-${voice}`,
    program: 'flite',
    args: (output, text) => [
      '-voice',
      voice,
      '--setf',
      `duration_stretch=${stretch}`,
      '--setf',
      `int_f0_target_mean=${pitch}`,
      '-o',
      output,
      '-t',
      text,
    ],
  };
}

function espeakCommand(): Command {
  const [accent, variant] = [oneOf(inFrench ? frenchAccents : accents), oneOf(variants)];
  const [speed, pitch] = [between(115, 205).toFixed(0), between(25, 75).toFixed(0)];
  return {
    voice: `espeak-${accent}+${variant}`,
    program: 'espeak-ng',
    args: (output, text) => [
      '-v',
      `${accent}+${variant}`,
      '-s',
      speed,
      '-p',
      pitch,
      '-w',
      output,
      '--',
      text,
    ],
  };
}

const texts = readTexts(folder);
const scratch = mkdtempSync(join(tmpdir(), 'acoustic-model-'));
const sound = createWriteStream(`${folder}/speech.s16`);
const index = createWriteStream(`${folder}/speech.jsonl`);
let at = 0;

async function speak(nth: number, text: TrainingText, command: Command): Promise<void> {
  const output = join(scratch, `${nth}.wav`);
  await run(command.program, [...command.args(output, text.text)]);
  const { samples, sampleRateHz } = decodeWav(readFileSync(output), output);
  rmSync(output);
  const whole = Int16Array.from(samples, sample => Math.round(32_767 * Math.max(-1, Math.min(1, sample))));
  sound.write(Buffer.from(whole.buffer));
  index.write(
    `${JSON.stringify({ ...text, voice: command.voice, sampleRateHz, at, length: whole.length })}\n`,
  );
  at += whole.length;
}

for (let nth = 0; nth < texts.length; nth += 4) {
  await Promise.all(
    texts
      .slice(nth, nth + 4)
      .map((text, i) =>
        speak(nth + i, text, i < 2 && !inFrench ? fliteCommand() : espeakCommand()).catch(error =>
          console.error(String(error).slice(0, 200)),
        ),
      ),
  );
  if (nth % 2000 === 0) console.log(nth);
}
sound.end();
index.end();
rmSync(scratch, { recursive: true });
