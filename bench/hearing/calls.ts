import { hearScenes, type Level, scenesAt } from './accuracy.ts';
import type { Listener } from './listener.ts';
import { type SpeakerSet, spread } from './material.ts';
import type { NoiseKind } from './noises.ts';
import type { Outcome } from './play.ts';
import type { Saying } from './scene.ts';

/** So many times each voice says each wording, in states spread over the procedure. */
const timesEach = 3;
/** So many replies of the procedure each voice says, of which none is a call. */
const otherReplies = 24;

const machines: readonly NoiseKind[] = ['idle', 'sweep', 'fan', 'wrench'];

export interface CallResult {
  readonly said: number;
  readonly heard: number;
  /** From the end of the speech to the report; negative when it was reported before the end. */
  readonly latenciesMs: readonly number[];
  readonly missed: readonly string[];
  readonly others: number;
  /** Of the others, what was taken for a call, and for which. */
  readonly falseCalls: readonly string[];
}

/** Each wording that calls for help, said to states that take it for a call. */
export function callSayings(replies: readonly Saying[]): readonly Saying[] {
  const callsIn = ({ grammar }: Saying) => (grammar.calls ?? []).flatMap(({ wordings }) => wordings);
  return [...new Set(replies.flatMap(callsIn))].flatMap(says =>
    spread(
      replies.filter(reply => callsIn(reply).includes(says)),
      timesEach,
    ).map(({ grammar }): Saying => {
      const calls = grammar.calls?.find(({ wordings }) => wordings.includes(says))?.id;
      return { grammar, says, means: { kind: 'stop', ...(calls === undefined ? {} : { calls }) } };
    }),
  );
}

/** What an utterance was called to be. */
const calledIn = ({ reports }: Outcome) =>
  reports.flatMap(({ heard, atMs }) =>
    heard.kind === 'stop' && heard.calls !== undefined
      ? [{ calls: heard.calls, text: heard.text, atMs }]
      : [],
  );

/** How calls for help are heard beside an engine, and what else is taken for one. */
export async function measureCalls(
  level: Level,
  replies: readonly Saying[],
  set: SpeakerSet,
  listener: Listener,
): Promise<CallResult> {
  const outcomesOf = async (sayings: readonly Saying[]) =>
    (await hearScenes(scenesAt(level, sayings, set, 'good', machines), listener)).flatMap(
      ({ outcomes }) => outcomes,
    );
  const called = (await outcomesOf(callSayings(replies))).map(outcome => {
    const { means, says, speechEndMs } = outcome.utterance;
    const meant = means?.kind === 'stop' ? means.calls : undefined;
    return { says, lateMs: calledIn(outcome).find(({ calls }) => calls === meant)?.atMs, speechEndMs };
  });
  const others = await outcomesOf(spread(replies, otherReplies));
  const latenciesMs = called.flatMap(({ lateMs, speechEndMs }) =>
    lateMs === undefined ? [] : [lateMs - speechEndMs],
  );
  return {
    said: called.length,
    heard: latenciesMs.length,
    latenciesMs,
    missed: called.filter(({ lateMs }) => lateMs === undefined).map(({ says }) => says),
    others: others.length,
    falseCalls: others.flatMap(outcome =>
      calledIn(outcome).map(({ text }) => `"${outcome.utterance.says}" as "${text}"`),
    ),
  };
}
