import { writeFileSync } from 'node:fs';
import { surely } from '../../src/session/who-speaks/join-voices.ts';
import { loadWeights } from '../../src/voice/phone-network/load-node.ts';
import { enoughUtterances, KnownVoices } from '../../src/voice/who-speaks/known-voices.ts';
import { loadVoiceWeights } from '../../src/voice/who-speaks/load-node.ts';
import { createVoiceNetwork, type Voice } from '../../src/voice/who-speaks/voice-network.ts';
import type { Level } from '../hearing/accuracy.ts';
import { shareInterval } from '../hearing/intervals.ts';
import { machineLoops } from '../hearing/people/clip-scenes.ts';
import { clipsOf, notMeasured, peopleFolders } from '../hearing/people/folders.ts';
import type { Clip } from '../hearing/people/recordings.ts';
import { voiceOf } from './voices.ts';

const PAGE = new URL('../../docs/who-speaks.md', import.meta.url);
const levels: readonly Level[] = ['clean', 20, 10, 5, 0];
/** How many utterances of each are known, when the next one comes. */
const learned = [enoughUtterances, 4, 8];
const mostClips = 10;
const mostOthers = 6;
const mostSpeakers = 130;

const { folders, rest } = peopleFolders(process.argv.slice(2));
if (folders.length === 0) throw new Error(notMeasured);
/** Another file of weights than the one that is shipped, to be tried before it is. */
const tried = rest.includes('--network') ? rest[rest.indexOf('--network') + 1] : undefined;
const split = rest.includes('--development') ? 'dev' : 'test';

const clips = clipsOf(folders).filter(clip => clip.split === split);
const loops = machineLoops(clips);
const speakers = new Map<string, Clip[]>();
for (const clip of clips) {
  const theirs = speakers.get(clip.speaker) ?? [];
  const known = clip.kind === 'speech' && clip.speaker !== '' && !clip.speaker.endsWith('?');
  if (known && theirs.length < mostClips) speakers.set(clip.speaker, [...theirs, clip]);
}
const [weights, voiceIn] = [await loadWeights(), createVoiceNetwork(await loadVoiceWeights(tried))];

interface Speaker {
  readonly source: string;
  readonly voices: readonly Voice[];
}

let nth = 0;
const voicesAt = (level: Level): Speaker[] =>
  [...speakers.values()]
    .filter(theirs => theirs.length >= enoughUtterances + 2)
    .slice(0, mostSpeakers)
    .flatMap(theirs => {
      const voices = theirs.flatMap(clip => {
        nth += 1;
        return voiceOf({ clip, level, noise: loops[nth % loops.length], nth }, weights, voiceIn) ?? [];
      });
      return [{ source: theirs[0]?.source ?? '', voices }];
    });

const pairs = (voices: readonly Voice[]) =>
  Array.from({ length: voices.length >> 1 }, (_, i) => [voices[2 * i], voices[2 * i + 1]] as [Voice, Voice]);

interface Count {
  own: number;
  ownTaken: number;
  other: number;
  otherTaken: number;
}

/** Each speaker as the second person, beside others of the same source as technicians. */
function trial(all: readonly Speaker[], enough: number): Count {
  const count: Count = { own: 0, ownTaken: 0, other: 0, otherTaken: 0 };
  all.forEach((second, i) => {
    const alike = all.filter((each, k) => k !== i && each.source === second.source);
    const others = Array.from(
      { length: Math.min(mostOthers, alike.length) },
      (_, k) => alike[(i + k * 7) % alike.length],
    );
    for (const technician of new Set(others)) {
      if (!technician || second.voices.length <= enough || technician.voices.length <= enough) continue;
      const known = new KnownVoices<'technician' | 'second'>();
      for (let k = 0; k < enough; k++) {
        known.learn('technician', technician.voices[k] as Voice);
        known.learn('second', second.voices[k] as Voice);
      }
      /** Said in the second person's name: "clear", and then "correct". */
      const taken = (first: Voice, then: Voice) =>
        [[first], [first, then]].every(
          said => surely(known.tell('technician', 'second', said), said.length)?.of !== 'technician',
        );
      for (const [own, clear, correct] of [
        ...pairs(second.voices.slice(enough)).map(pair => [true, ...pair] as const),
        ...pairs(technician.voices.slice(enough)).map(pair => [false, ...pair] as const),
      ]) {
        const is = taken(clear, correct);
        count[own ? 'own' : 'other'] += 1;
        count[own ? 'ownTaken' : 'otherTaken'] += Number(is);
      }
    }
  });
  return count;
}

const share = (part: number, of: number) => {
  const [low, high] = shareInterval(part, of);
  return `${((100 * part) / of).toFixed(1)} (${(100 * low).toFixed(1)}-${(100 * high).toFixed(1)}) %`;
};

const rows: string[] = [];
for (const level of levels) {
  const all = voicesAt(level);
  for (const enough of learned) {
    const { own, ownTaken, other, otherTaken } = trial(all, enough);
    if (own === 0) continue;
    const row = `| ${level === 'clean' ? level : `${level} dB`} | ${enough} | ${share(ownTaken, own)} | ${share(otherTaken, other)} | ${own + other} of ${all.length} |`;
    rows.push(row);
    console.log(row);
  }
}

if (rest.includes('--write'))
  writeFileSync(
    PAGE,
    `# Who is speaking

Written by \`npm run who-speaks -- --people FOLDER ... --write\`. People of the ${split} split, of whom nothing was learned,
beside recorded machines; clips of at most 1.4 s, most of them one word. Each is the second person once, and six others of the
same recordings (the same rooms and microphones, which makes it harder) the technician. Of both so many utterances are
known, whatever was said in them. Then two more are said in the second person's name, as "clear" and its "correct" are, and the
tool refuses what is surely in the technician's voice: of the first, and of both together. In brackets the interval at 95 %
(Wilson), which takes those of one pair of people as independent and is too narrow for that.

| speech above noise | utterances known of each | the second person's own taken | the technician's taken for it | trials, speakers |
|---|---|---|---|---|
${rows.join('\n')}

A voice only refuses. What is taken here is asked and confirmed as everything is, and what is refused is asked for again, by
name; keys and touch are always believed. The bounds are set by the first column: whoever is refused their own "clear" twice
stops using the tool. The aims are 97 and 1 % at 10 dB after four. What would close the second: more speakers to
learn from, and longer utterances; one word alone tells 8 of 100 wrongly where 97 are taken.
`,
  );
