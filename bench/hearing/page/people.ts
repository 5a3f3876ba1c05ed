import { allOf } from '../count.ts';
import { countInterval } from '../intervals.ts';
import type { Results } from '../results.ts';
import { countOf, enough, levelText, share, shares, table, takenHead } from './cells.ts';

type RepliesPart = NonNullable<Results['peopleDigits']>;

export function peopleText(results: Results): string[] {
  const { peopleStops, peopleTalk } = results;
  const parts = [
    ...repliesText(repliesIn(results)),
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

/** The parts of people's replies that were measured. */
export const repliesIn = ({
  peopleDigits,
  peopleNumbers,
  peopleWords,
  peopleOtherWords,
}: Results): readonly RepliesPart[] =>
  [peopleDigits, peopleNumbers, peopleWords, peopleOtherWords].filter(part => part !== undefined);

function repliesText(parts: readonly RepliesPart[]): string[] {
  if (parts.length === 0) return [];
  const rows = parts.flatMap(part => part.rows);
  const took = parts
    .filter(({ replyLatency }) => replyLatency.count > 0)
    .map(
      ({ rows: [first], replyLatency: { medianMs, p95Ms, count }, spent, size }) =>
        `${first?.of}: median ${medianMs} ms, 95 % within ${p95Ms} ms (${count}), ${spent.realTimeFactor.toFixed(3)} s (size: ${size})`,
    );
  return [
    '### Replies of people',
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
    `From the end of speech to the report of right replies, and processor time per second of sound; where a recording's speech ends is told by its level. ${took.join('; ')}.`,
    `Sources: ${[...new Set(parts.flatMap(({ sources }) => sources))].join('; ')}.`,
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
    'While one state of the procedure after the other waits. What is taken for a reply or a number is read back, as in a session, and a yes within eight seconds agrees to it.',
    table(
      [
        'sound',
        'speech above noise',
        'hours',
        'people',
        'stops in 10 minutes',
        'replies and numbers an hour',
        'of them agreed to',
        'control words an hour',
      ],
      talk.rows.map(({ of, level, hours, speakers, stops, gating, confirmed, controls }) => [
        of,
        levelText(level),
        `${hours.toFixed(2)}${hours < enough.hours ? ', preliminary' : ''}`,
        String(speakers),
        rate(stops, hours, tenMinutes),
        rate(gating, hours, 1),
        String(confirmed ?? ''),
        rate(controls, hours, 1),
      ]),
    ),
  ];
}
