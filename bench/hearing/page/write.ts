import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { earNow, type Results, type StoredResults } from '../results.ts';
import { levelText } from './cells.ts';
import { accuracyText, callsText, readBackText, stopsText, takenText, talkText } from './made.ts';
import { notReachedText } from './not-reached.ts';
import { peersText } from './peers.ts';
import { peopleText } from './people.ts';
import { shortTable } from './short.ts';

const pagePath = fileURLToPath(new URL('../../../docs/hearing.md', import.meta.url));

const titles: Readonly<Record<keyof Results, string>> = {
  accuracy: 'Replies',
  readBack: 'Something wrong is read back',
  stops: 'Stop words',
  calls: 'Calls for help',
  talk: 'Talk and noise that answer nothing',
  microphones: 'Microphones',
  humans: 'Recordings of people in Debian packages',
  peopleDigits: 'Digits of people',
  peopleNumbers: 'Numbers of people',
  peopleWords: 'Words of people',
  peopleOtherWords: 'Single words of people that answer nothing',
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
    '## In short',
    shortTable(results),
    'The rest was asked again; a stop that nobody said counts as wrong. Intervals, and which figures are preliminary, are below.',
    ...notReachedText(results),
    ...peopleText(results),
    ...peersText(results),
    ...accuracyText(results),
    ...readBackText(results),
    ...stopsText(results),
    ...callsText(results),
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
