import type { Level } from '../accuracy.ts';
import type { Listener } from '../listener.ts';
import { grammarAt } from '../material.ts';
import { noiseAtSnr } from '../mix.ts';
import type { Scene } from '../scene.ts';
import { acceptedBy, type FalseAccepts } from '../talk-hours.ts';
import { clipScenes, spokenClip } from './clip-scenes.ts';
import { atMost, type PreparedPeople, speakersOf } from './prepare.ts';
import { soundOf } from './recordings.ts';

export interface PeopleTalk extends FalseAccepts {
  readonly of: string;
  readonly level: Level;
  readonly speakers: number;
}

/** How loud noise is where nobody speaks: as beside speech 5 dB above it. */
const noiseDb = 5;

/** What of people's talk right at the microphone, and of recorded noise, is taken for an answer. */
export async function measurePeopleTalk(
  people: PreparedPeople,
  levels: readonly Level[],
  most: number,
  listener: Listener,
  keep: (rows: readonly PeopleTalk[]) => void,
): Promise<void> {
  const rows: PeopleTalk[] = [];
  const spoken = atMost(people.material.talk, Math.ceil(most / 2)).map(spokenClip);
  const speakers = speakersOf(spoken.map(({ saying }) => saying));
  for (const level of levels) {
    const found = await acceptedBy(clipScenes(spoken, level, people.loops), listener);
    rows.push({ of: 'talk right at the microphone', level, speakers, ...found });
    keep(rows);
  }
  rows.push({
    of: 'recorded noise alone',
    level: noiseDb,
    speakers: 0,
    ...(await acceptedBy(noiseScenes(people), listener)),
  });
  keep(rows);
}

/** Every recorded noise once, while one state after the other waits for its reply. */
function noiseScenes({ clips, replies }: PreparedPeople): readonly Scene[] {
  const noises = clips.filter(({ kind, text }) => kind === 'noise' && !/talk|babble/.test(text));
  return noises.map((clip, i): Scene => {
    const samples = noiseAtSnr(soundOf(clip), noiseDb);
    const whole = { fromSample: 0, toSample: samples.length, speechEndMs: 0 };
    const saying = { grammar: grammarAt(replies, i * 5), says: `noise: ${clip.text}`, means: undefined };
    return { voice: '', noise: clip.text, snrDb: noiseDb, samples, utterances: [{ ...saying, ...whole }] };
  });
}
