import { speechRateHz } from '../../../src/voice/resample.ts';
import { hearScenes, type Level } from '../accuracy.ts';
import { type Latency, latencyOf } from '../latency.ts';
import type { Listener } from '../listener.ts';
import type { Spoken } from '../scene.ts';
import { type StopResult, stopResultOf } from '../stops.ts';
import { clipScenes, spokenClip } from './clip-scenes.ts';
import { atMost, type PreparedPeople, speakersOf } from './prepare.ts';
import { digitGrammar } from './rows.ts';
import { stopInTalk } from './stop-in-talk.ts';

export interface PeopleStops extends Omit<StopResult, 'latenciesMs'> {
  readonly of: 'alone' | 'in talk';
  readonly level: Level;
  readonly speakers: number;
  readonly latency: Latency;
}

/** People's stops alone, and cut into the talk of somebody. */
export function stopsOf(
  { material }: PreparedPeople,
  most: number,
): Readonly<Record<PeopleStops['of'], readonly Spoken[]>> {
  const means = { kind: 'stop' as const };
  const alone = atMost(material.stops, most);
  const within = atMost(material.stops, Math.ceil(most / 3));
  const long = material.talk.filter(({ clip }) => clip.lengthSamples > 3 * speechRateHz);
  return {
    alone: alone.map(clip => spokenClip({ clip, grammar: digitGrammar, means })),
    'in talk': within.map((stop, i) =>
      stopInTalk(stop, long[(i * 5) % long.length]?.clip ?? stop, digitGrammar),
    ),
  };
}

export async function measurePeopleStops(
  people: PreparedPeople,
  levels: readonly Level[],
  most: number,
  listener: Listener,
  keep: (rows: readonly PeopleStops[]) => void,
): Promise<void> {
  const rows: PeopleStops[] = [];
  const { alone, 'in talk': within } = stopsOf(people, most);
  for (const [of, spoken] of [
    ['alone', alone],
    ['in talk', within],
  ] as const) {
    for (const level of levels) {
      const { latenciesMs, ...result } = stopResultOf(
        await hearScenes(clipScenes(spoken, level, people.loops), listener),
      );
      const speakers = speakersOf(spoken.map(({ saying }) => saying));
      rows.push({ of, level, speakers, ...result, latency: latencyOf(latenciesMs) });
      keep(rows);
    }
  }
}
