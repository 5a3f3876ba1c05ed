import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { allOf, sum, type Taken } from './count.ts';
import { countInterval, shareInterval } from './intervals.ts';
import type { NoiseKind } from './noises.ts';
import { earNow, type Results, type StoredResults } from './results.ts';

const pagePath = fileURLToPath(new URL('../../docs/hearing.md', import.meta.url));

const percent = (part: number, whole: number) => `${((100 * part) / Math.max(whole, 1)).toFixed(1)} %`;
const levelText = (level: number | string) => (level === 'clean' ? 'clean' : `${level} dB`);

const table = (head: readonly string[], rows: readonly (readonly string[])[]) =>
  [head, head.map(() => '---'), ...rows].map(cells => `| ${cells.join(' | ')} |`).join('\n');

const share = (part: number, whole: number) => {
  const [low, high] = shareInterval(part, whole);
  const rounded = (value: number) => (100 * value).toFixed(1);
  return `${rounded(part / Math.max(1, whole))} (${rounded(low)}-${rounded(high)}) %`;
};

const takenHead = ['right', 'asked again', 'wrong', 'taken for stop'];
const shares = (taken: Taken) =>
  [taken.right, taken.unclear, taken.wrong, taken.falseStop].map(part => share(part, allOf(taken)));
const shareCells = (taken: Taken) => [...shares(taken), String(allOf(taken))];

const takenCells = (taken: Taken) => [
  percent(taken.right, allOf(taken)),
  String(taken.unclear),
  String(taken.wrong),
  String(taken.falseStop),
  String(allOf(taken)),
];

const togetherKinds: Readonly<Record<string, readonly NoiseKind[]>> = {
  'idle, sweep, fan, wrench': ['idle', 'sweep', 'fan', 'wrench'],
  'babble, radio': ['babble', 'radio'],
};

function accuracyText({ accuracy }: Results): string[] {
  if (!accuracy) return [];
  const { rows, replyLatency, spent } = accuracy;
  const inNoise = rows.filter(({ level }) => level !== 'clean');
  const byNoise = inNoise.flatMap(({ level, byNoise }) =>
    Object.entries(byNoise).map(([noise, taken]) => [levelText(level), noise, ...shareCells(taken)]),
  );
  const together = inNoise.flatMap(({ level, byNoise }) =>
    Object.entries(togetherKinds).map(([name, kinds]) => {
      const taken = sum(kinds.flatMap(kind => byNoise[kind] ?? []));
      return [levelText(level), name, ...shareCells(taken)];
    }),
  );
  const clean = rows
    .filter(({ level }) => level === 'clean')
    .map(({ taken }) => [levelText('clean'), '', ...shareCells(taken)]);
  return [
    `## Replies (size: ${accuracy.size})`,
    `${accuracy.repliesPerVoice} wordings in the states that take them, each said by ${accuracy.voices.join(', ')}.`,
    table(['speech above noise', 'noise', ...takenHead, 'of'], [...clean, ...together]),
    'By kind of noise:',
    table(['speech above noise', 'noise', ...takenHead, 'of'], byNoise),
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

/** So few, and a figure is not yet to be relied on. */
const enough = { clips: 300, speakers: 30, hours: 3 };

const countOf = (clips: number, speakers: number) =>
  `${clips} by ${speakers}${clips < enough.clips || speakers < enough.speakers ? ', preliminary' : ''}`;

function peopleText(results: Results): string[] {
  const { peopleReplies, peopleStops, peopleTalk } = results;
  const parts = [
    ...repliesOfPeople(peopleReplies),
    ...stopsOfPeople(peopleStops),
    ...talkOfPeople(peopleTalk),
  ];
  if (parts.length === 0) return [];
  return [
    '## People',
    'Recordings of people and of machines that are not in this repository, from folders that whoever measures names (`--people`): the part held apart for tests, by speakers from whom nothing was learned and on whom no bound was chosen. One clip after the other, those of a speaker together and at most 10 of each, to an ear that is not restarted between them. The noise is of recorded engines, chainsaws, helicopters, a sawmill and the like, and runs for seconds before anybody speaks. In brackets the interval at 95 % (Wilson for shares, Byar for counts). A figure of fewer than 300 clips or 30 people, or of less than 3 hours of talk, is preliminary.',
    ...parts,
  ];
}

function repliesOfPeople(replies: Results['peopleReplies']): string[] {
  if (!replies) return [];
  const { size, rows, sources, replyLatency, spent } = replies;
  return [
    `### Replies of people (size: ${size})`,
    'Each in a grammar that takes it, with the control words and the stop wordings beside it, as in the product; single words that answer nothing in that of a figure or of yes and no.',
    table(
      ['what', 'speech above noise', ...takenHead, 'clips by people'],
      rows.map(({ of, level, speakers, taken }) => [
        of,
        levelText(level),
        ...shares(taken),
        countOf(allOf(taken), speakers),
      ]),
    ),
    `End of speech to report, of right replies: median ${replyLatency.medianMs} ms, 95 % within ${replyLatency.p95Ms} ms (${replyLatency.count}; where a recording's speech ends is told by its level). Processor time per second of sound: ${spent.realTimeFactor.toFixed(3)} s. Sources: ${sources.join('; ')}.`,
    'What was not right, the commonest first:',
    table(
      ['what', 'speech above noise', 'said, and what it was heard as'],
      rows.map(({ of, level, confusions }) => [of, levelText(level), confusions.slice(0, 12).join('; ')]),
    ),
  ];
}

function stopsOfPeople(stops: Results['peopleStops']): string[] {
  if (!stops) return [];
  return [
    `### Stops of people (size: ${stops.size})`,
    'Alone, and cut into the talk of somebody without a pause.',
    table(
      ['stop', 'speech above noise', 'heard', 'within 500 ms', 'median', '95 % within', 'clips by people'],
      stops.rows.map(({ of, level, heard, heardInTime, said, latency, speakers }) => [
        of,
        levelText(level),
        share(heard, said),
        share(heardInTime, said),
        `${latency.medianMs} ms`,
        `${latency.p95Ms} ms`,
        countOf(said, speakers),
      ]),
    ),
  ];
}

function talkOfPeople(talk: Results['peopleTalk']): string[] {
  if (!talk) return [];
  const rate = (count: number, hours: number, inHours: number) => {
    const [low, high] = countInterval(count).map(each => ((each * inHours) / hours).toFixed(1));
    return `${((count * inHours) / hours).toFixed(1)} (${low}-${high})`;
  };
  const tenMinutes = 1 / 6;
  return [
    `### Talk of people and recorded noise that answer nothing (size: ${talk.size})`,
    'While one state of the procedure after the other waits, and before any read-back.',
    table(
      [
        'sound',
        'speech above noise',
        'hours',
        'people',
        'stops in 10 minutes',
        'replies and numbers an hour',
        'control words an hour',
      ],
      talk.rows.map(({ of, level, hours, speakers, stops, gating, controls }) => [
        of,
        levelText(level),
        `${hours.toFixed(2)}${hours < enough.hours ? ', preliminary' : ''}`,
        String(speakers),
        rate(stops, hours, tenMinutes),
        rate(gating, hours, 1),
        rate(controls, hours, 1),
      ]),
    ),
  ];
}

function peersText({ peers }: Results): string[] {
  if (!peers) return [];
  const { rows, farthest, size } = peers;
  const bounds = Object.entries(farthest).map(([name, each]) => `${name} ${each}`);
  return [
    `## Beside other recognizers (size: ${size})`,
    `On the same sound in the same run. Our own ear has to find each utterance in its noise; the others are given it cut out. Native PocketSphinx (Debian's) is given the grammar. What recognizers of free text write is taken for the phrase of the grammar that is nearest by its phones, if it is near enough: how near, in phones wrong for each phone written, was chosen on people and voices of the development set at 10 dB, by most right beyond wrong (${bounds.join(', ')}). Clips are spread evenly over those of the first table; so few are preliminary.`,
    table(
      ['what', 'speech above noise', 'system', ...takenHead, 'utterances by speakers'],
      rows.map(({ of, level, system, taken, speakers }) => [
        of,
        levelText(level),
        system,
        ...shares(taken),
        countOf(allOf(taken), speakers),
      ]),
    ),
  ];
}

const titles: Readonly<Record<keyof Results, string>> = {
  accuracy: 'Replies',
  readBack: 'Something wrong is read back',
  stops: 'Stop words',
  talk: 'Talk and noise that answer nothing',
  microphones: 'Microphones',
  humans: 'Recordings of people in Debian packages',
  peopleReplies: 'Replies of people',
  peopleStops: 'Stops of people',
  peopleTalk: 'Talk of people and recorded noise that answer nothing',
  peers: 'Beside other recognizers',
};

function partsOfEarlierEars(results: StoredResults): string {
  const now = earNow();
  const names = (Object.keys(titles) as (keyof Results)[]).filter(
    name => results[name] !== undefined && results.ears?.[name] !== now,
  );
  if (names.length === 0) return '';
  return `**Not yet measured with the ear that ships (its weights and bounds), but with one before it:** ${names.map(name => titles[name]).join('; ')}.`;
}

/** Writes the figures as a page. */
export function writePage(results: StoredResults): void {
  const earlier = partsOfEarlierEars(results);
  const { microphones, humans } = results;
  const paragraphs = [
    '# How a loud bay is heard',
    'Written by `npm run hearing`; the same figures are in hearing.json. The whole ear listens: endpointing, rejection and stop words. Speech of Debian voices that are built from recorded speech, in synthesized noise (bench/hearing), and recordings of people in recorded noise of machines, which are not in this repository. No real engine start was heard. Speech and noise are measured from 0 to 8 kHz without weighting: the speech over the frames in which somebody speaks, the noise over its whole length, its pauses included. Voices, people and noises that settings were chosen on are not among these, nor any that the network learned from (acoustic-model), but for the woman of festival-slt-hts, whom it knows by another method, and noises made by the same rules.',
    ...(earlier === '' ? [] : [earlier]),
    ...peopleText(results),
    ...peersText(results),
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
