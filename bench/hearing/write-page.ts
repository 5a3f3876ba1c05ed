import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { allOf, type Taken } from './count.ts';
import { countInterval, shareInterval } from './intervals.ts';
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

const share = (part: number, whole: number) => {
  const [low, high] = shareInterval(part, whole);
  const rounded = (value: number) => (100 * value).toFixed(1);
  return `${rounded(part / Math.max(1, whole))} (${rounded(low)}-${rounded(high)}) %`;
};

/** So few, and a figure is not yet to be relied on. */
const enough = { clips: 300, speakers: 30, hours: 3 };

function peopleText({ people }: Results): string[] {
  if (!people) return [];
  const countOf = (clips: number, speakers: number) =>
    `${clips} by ${speakers}${clips < enough.clips || speakers < enough.speakers ? ', preliminary' : ''}`;
  const rate = (count: number, hours: number, perHours: number) => {
    const [low, high] = countInterval(count).map(each => ((each * perHours) / hours).toFixed(1));
    return `${((count * perHours) / hours).toFixed(1)} (${low}-${high})`;
  };
  const tenMinutes = 1 / 6;
  return [
    `## People (size: ${people.size})`,
    `Recordings of people and of machines that are not in this repository, from folders that its user names (\`--people\`): the part held apart for tests, whose speakers nothing was learned from and no bound chosen on. One clip after the other, those of a speaker together, at most 10 of each; an ear that is never restarted. Noise: recorded engines, chainsaws, helicopters, a sawmill and the like, running for seconds before anybody speaks. Behind each share its interval (Wilson, 95 %). Sources: ${people.sources.join('; ')}. A grammar of single figures also takes the control words and the stop wordings, as in the product.`,
    table(
      ['what', 'speech above noise', 'right', 'asked again', 'wrong', 'taken for stop', 'clips by people'],
      people.rows.map(({ of, level, speakers, taken }) => [
        of,
        levelText(level),
        ...[taken.right, taken.unclear, taken.wrong, taken.falseStop].map(part => share(part, allOf(taken))),
        countOf(allOf(taken), speakers),
      ]),
    ),
    `End of speech to report, of right replies: median ${people.replyLatency.medianMs} ms, 95 % within ${people.replyLatency.p95Ms} ms (${people.replyLatency.count}; the end is found by level in clips with a room's noise in them). Processor time per second of sound: ${people.spent.realTimeFactor.toFixed(3)} s.`,
    'Stop, alone and cut into other talk:',
    table(
      ['stop', 'speech above noise', 'heard', 'within 500 ms', 'median', '95 % within', 'clips by people'],
      people.stops.map(({ of, level, heard, heardInTime, said, latency, speakers }) => [
        of,
        levelText(level),
        share(heard, said),
        share(heardInTime, said),
        `${latency.medianMs} ms`,
        `${latency.p95Ms} ms`,
        countOf(said, speakers),
      ]),
    ),
    'What answers nothing, while one state of the procedure after the other waits (before any read-back):',
    table(
      [
        'sound',
        'speech above noise',
        'hours',
        'false stops in 10 minutes',
        'replies and numbers an hour',
        'control words an hour',
      ],
      people.talk.map(({ of, level, hours, stops, gating, controls }) => [
        of,
        levelText(level),
        `${hours.toFixed(2)}${hours < enough.hours ? ', preliminary' : ''}`,
        rate(stops, hours, tenMinutes),
        rate(gating, hours, 1),
        rate(controls, hours, 1),
      ]),
    ),
    'What was taken for what, most often first:',
    table(
      ['what', 'speech above noise', 'said and heard'],
      people.confusions.map(({ of, level, list }) => [of, levelText(level), list.slice(0, 12).join('; ')]),
    ),
  ];
}

/** Writes the figures as a page. */
export function writePage(results: Results): void {
  const { microphones, humans } = results;
  const paragraphs = [
    '# How a loud bay is heard',
    'Written by `npm run hearing`; the same figures are in hearing.json. The whole ear of the product listens: endpointing, rejection and stop words, as it ships. Speech of Debian voices that are built from recorded speech, in synthesized noise (bench/hearing), and recordings of people in recorded noise of machines, which are not in this repository. No real engine start was heard. Speech and noise are measured from 0 to 8 kHz without weighting: the speech over the frames in which somebody speaks, the noise over its whole length, its pauses included. Voices, people and noises that settings were chosen on are not among these, nor any that the network learned from (acoustic-model), but for the woman of festival-slt-hts, whom it knows by another method.',
    ...peopleText(results),
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
          `## Recordings of people in Debian packages (size: ${humans.size})`,
          humans.rows.map(({ of, taken }) => ({ name: of, taken })),
        )
      : []),
  ];
  writeFileSync(pagePath, `${paragraphs.join('\n\n')}\n`);
}
