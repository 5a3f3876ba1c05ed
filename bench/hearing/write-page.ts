import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { allOf, type Taken } from './count.ts';
import type { Results } from './results.ts';

const pagePath = fileURLToPath(new URL('../../docs/hearing.md', import.meta.url));

const percent = (part: number, whole: number) => `${((100 * part) / Math.max(whole, 1)).toFixed(1)} %`;
const levelText = (level: number | string) => (level === 'clean' ? 'clean' : `${level} dB`);

const table = (head: readonly string[], rows: readonly (readonly string[])[]) =>
  [head, head.map(() => '---'), ...rows].map(cells => `| ${cells.join(' | ')} |`).join('\n');

const takenCells = (taken: Taken) => [
  percent(taken.right, allOf(taken)),
  String(taken.unclear),
  String(taken.wrong),
  String(taken.falseStop),
  String(allOf(taken)),
];

function accuracyText({ accuracy }: Results): string[] {
  if (!accuracy) return [];
  const { rows, replyLatency, spent } = accuracy;
  const byNoise = rows
    .filter(({ system, level }) => system === 'first-fire' && level !== 'clean')
    .flatMap(({ level, byNoise }) =>
      Object.entries(byNoise).map(([noise, taken]) => [levelText(level), noise, ...takenCells(taken)]),
    );
  return [
    `## Replies (size: ${accuracy.size})`,
    `${accuracy.repliesPerVoice} wordings in the states that take them, each said by ${accuracy.voices.join(', ')}.`,
    table(
      ['system', 'speech above noise', 'exact', 'unclear', 'wrong', 'taken for stop', 'of'],
      rows.map(({ system, level, taken }) => [system, levelText(level), ...takenCells(taken)]),
    ),
    'First-fire by kind of noise:',
    table(['speech above noise', 'noise', 'exact', 'unclear', 'wrong', 'taken for stop', 'of'], byNoise),
    `End of speech to report: median ${replyLatency.medianMs} ms, 95 % within ${replyLatency.p95Ms} ms (${replyLatency.count} replies; time of the sound plus processor time). Processor time per second of sound: ${spent.realTimeFactor.toFixed(2)} s.`,
  ];
}

function readBackText({ readBack }: Results): string[] {
  if (!readBack) return [];
  return [
    '## Something wrong is read back, and its speaker objects',
    table(
      ['speech above noise', 'taken for agreement', 'heard as an objection', 'of'],
      readBack.rows.map(({ level, takenForAgreement, heard, objections }) => [
        levelText(level),
        String(takenForAgreement),
        String(heard),
        String(objections),
      ]),
    ),
  ];
}

function stopsText({ stops }: Results): string[] {
  if (!stops) return [];
  return [
    `## Stop words (size: ${stops.size})`,
    table(
      ['speech above noise', 'heard', 'within 500 ms', 'of', 'median', '95 % within'],
      stops.rows.map(({ level, heard, heardInTime, said, latency }) => [
        levelText(level),
        percent(heard, said),
        percent(heardInTime, said),
        String(said),
        `${latency.medianMs} ms`,
        `${latency.p95Ms} ms`,
      ]),
    ),
  ];
}

function talkText({ talk }: Results): string[] {
  if (!talk) return [];
  return [
    `## Talk and noise that answer nothing (size: ${talk.size})`,
    table(
      ['sound', 'hours', 'taken for a reply or number', 'for a control word', 'for a stop'],
      talk.rows.map(({ of, hours, gating, controls, stops }) => [
        of,
        hours.toFixed(2),
        String(gating),
        String(controls),
        String(stops),
      ]),
    ),
  ];
}

function takenText(
  title: string,
  rows: readonly { readonly name: string; readonly taken: Taken }[],
): string[] {
  return [
    title,
    table(
      ['', 'exact', 'unclear', 'wrong', 'taken for stop', 'of'],
      rows.map(({ name, taken }) => [name, ...takenCells(taken)]),
    ),
  ];
}

/** Writes the figures as a page. */
export function writePage(results: Results): void {
  const { microphones, humans } = results;
  const paragraphs = [
    '# How a loud bay is heard',
    'Written by `npm run hearing`; the same figures are in hearing.json. Speech of Debian voices that are built from recorded speech, in synthesized noise (bench/hearing): no real engine and, but for the last table, no living person was heard. Speech and noise are measured from 0 to 8 kHz without weighting: the speech over the frames in which somebody speaks, the noise over its whole length, its pauses included. Voices and noises that settings were chosen on are not among these. The phone network had met neither the voices, but for the woman of festival-slt-hts by another method, nor these noises, but others made by the same rules.',
    ...accuracyText(results),
    ...readBackText(results),
    ...stopsText(results),
    ...talkText(results),
    ...(microphones
      ? takenText(
          `## Microphones (size: ${microphones.size})`,
          microphones.rows.map(({ microphone, level, taken }) => ({
            name: `${microphone}, ${levelText(level)}`,
            taken,
          })),
        )
      : []),
    ...(humans
      ? takenText(
          `## Recordings of people (size: ${humans.size})`,
          humans.rows.map(({ of, taken }) => ({ name: of, taken })),
        )
      : []),
  ];
  writeFileSync(pagePath, `${paragraphs.join('\n\n')}\n`);
}
