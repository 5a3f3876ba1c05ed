import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { JobCard } from '../../machines/context.ts';
import { nearThermostat } from '../../machines/limits/engine.ts';
import { offerOf, stateName } from '../../machines/moment.ts';
import type { Quantity } from '../../machines/vocabulary.ts';
import { languages } from '../../prompts/index.ts';
import type { LanguageCode } from '../../prompts/types.ts';
import { loadProfile } from '../../src/profile/load.ts';
import { openNewLog, type RecordLog } from '../../src/record/index.ts';
import { grammarOf } from '../../src/session/grammar.ts';
import { headerData } from '../../src/session/header.ts';
import { type Happening, Session } from '../../src/session/session.ts';
import { shownUnit, toUser, type UnitSystem, userUnit } from '../../src/session/units.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';
import type { Pcm, Synthesizer } from '../../src/voice/ports.ts';
import { createTypedRecognizer, type TypedRecognizer } from '../../src/voice/recognizers/typed.ts';
import { SilentSink } from '../../src/voice/speakers/silent-sink.ts';
import { SpeechQueue } from '../../src/voice/speech-queue.ts';
import { goodPauseMs, goodValue, isLeftToTime } from '../machines/helpers/good.ts';
import { isAskedTogether } from './together.ts';

export const job: JobCard = { vehicle: 'V', engine: 'E', technician: 'T', second: 'S', supervisor: 'U' };

const openRecords = new Set<RecordLog>();

// Benches lead sessions with these parts too, and end with their process.
if (process.env.VITEST !== undefined) {
  const { afterAll } = await import('vitest');
  afterAll(async () => {
    // One that a test has left on a full disk keeps what it has, and stays open.
    await Promise.allSettled([...openRecords].map(record => record.close()));
    openRecords.clear();
  });
}

/** Sound as long as people need for the words, and silent: what a test of timing needs of a voice. */
export const speakingTime: Synthesizer = {
  synthesize: async (text): Promise<Pcm> => ({
    samples: new Float32Array(16 * 60 * text.length),
    sampleRateHz: 16_000,
  }),
};

export interface Rig {
  readonly session: Session;
  readonly clock: VirtualClock;
  readonly record: RecordLog;
  readonly keys: TypedRecognizer;
  readonly said: string[];
  readonly happenings: Happening[];
  readonly path: string;
  /** Moves time on in small steps, with everything carried out that falls due on the way. */
  pass(ms: number): Promise<void>;
  type(text: string): Promise<void>;
  key(): string;
}

/** A session with real parts throughout, but for a clock that obeys and a voice that makes no sound. */
export async function rig(
  profileName = 'demo-six',
  units: UnitSystem = 'us',
  path = join(mkdtempSync(join(tmpdir(), 'session-')), 'record.jsonl'),
  language: LanguageCode = 'en',
  via: 'keys' | 'voice' = 'keys',
): Promise<Rig> {
  const profile = await loadProfile(profileName);
  const clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'));
  const record = await openNewLog(path, headerData({ profile, job, language, units }), {
    wall: () => clock.wall(),
    monoMs: () => clock.nowMs(),
  });
  const speech = new SpeechQueue(speakingTime, new SilentSink((ms, signal) => clock.sleep(ms, signal)), () =>
    clock.nowMs(),
  );
  const session = new Session({
    profile,
    job,
    language: languages[language],
    units,
    clock,
    record,
    speech,
  });
  return rigAround(session, clock, record, path, via);
}

/** @param via as what the typed lines reach the session: keys, or a voice that is heard to the letter */
export function rigAround(
  session: Session,
  clock: VirtualClock,
  record: RecordLog,
  path: string,
  via: 'keys' | 'voice' = 'keys',
): Rig {
  openRecords.add(record);
  const keys = createTypedRecognizer();
  session.attach(keys, via);
  const said: string[] = [];
  const happenings: Happening[] = [];
  session.watch(happening => {
    if (!happening) return;
    happenings.push(happening);
    if (happening.kind === 'said') said.push(happening.shown);
  });
  const settle = async () => {
    await session.settled();
    await setImmediate();
    await session.settled();
  };
  return {
    session,
    clock,
    record,
    keys,
    said,
    happenings,
    path,
    key: () => stateName(session.moment),
    async pass(ms) {
      for (let left = ms; left > 0; ) {
        const next = clock.nextMs();
        const step = Math.min(left, next === null ? left : Math.max(0, next - clock.nowMs()));
        clock.advance(step);
        left -= step;
        await settle();
        if (step === 0 && next !== null && next <= clock.nowMs()) left -= 1;
      }
    },
    async type(text) {
      keys.type(text);
      await settle();
    },
  };
}

/** An idling engine warms by its own time constant: common practice, no published source. */
const WARMS_IN_S = 490;
const HEATS_BY_K = 100;

/** What an engine in good order shows, in SI. */
export function goodReading(quantity: Quantity, { session, clock, key }: Rig): number {
  const { moment } = session;
  const good = goodValue(quantity, moment);
  if (quantity !== 'coolantTemperature' || !key().startsWith('warmUp')) return good;
  const runsS = (clock.nowMs() - (moment.context.bursts.at(-1)?.endMs ?? 0)) / 1000;
  return 5 + HEATS_BY_K * (1 - Math.exp(-runsS / WARMS_IN_S));
}

/** The gauge was read near the thermostat's opening, and since then the hose has got hot. */
function isHoseHot(rig: Rig): boolean {
  const { context } = rig.session.moment;
  const last = context.readings.findLast(({ step }) => step === context.step)?.si ?? Number.NaN;
  const near = nearThermostat(context, last);
  return (
    near.ok && near.value.met && goodReading('coolantTemperature', rig) >= context.profile.thermostat.opensC
  );
}

/** The next thing that people say in a start where all goes well; null when there is only time to wait for. */
export function goodReply(rig: Rig): string | null {
  const { session } = rig;
  const { moment } = session;
  const { language, units } = session.parts;
  const offer = offerOf(moment);
  if (offer.awaits === 'drill') return language.stopWordings[0] ?? null;
  if (isLeftToTime(moment)) return null;
  if (offer.replies.includes('yes')) return language.replies.yes[0] ?? null;
  if (offer.replies.includes('thermostatOpen') && isHoseHot(rig))
    return language.replies.thermostatOpen[0] ?? null;
  if (offer.quantity) {
    const unit = userUnit(units, shownUnit(offer.quantity));
    const step = grammarOf(moment, language, units, 'keys').number?.step ?? 1;
    const value = Math.round(toUser(unit, goodReading(offer.quantity, rig)) / step) * step;
    return value.toFixed(step < 1 ? unit.decimals : 0).replace('.', language.words.decimalMark);
  }
  const [reply] = offer.replies;
  return reply ? (language.replies[reply][0] ?? null) : null;
}

/** Answers well until the session is over or in the named state. */
export async function goUntil(rig: Rig, key = ''): Promise<void> {
  for (let turn = 0; turn < 600 && rig.session.moment.status === 'active'; turn += 1) {
    if (key !== '' && rig.key() === key) return;
    const apart = isAskedTogether(rig.session.moment, key);
    const { language } = rig.session.parts;
    const reply = apart ? language.replies.oneByOne[0] : goodReply(rig);
    if (reply === null || reply === undefined)
      await rig.pass(Math.max(1, (rig.clock.nextMs() ?? 0) - rig.clock.nowMs()));
    else {
      const pauseMs = goodPauseMs(rig.session.moment);
      if (pauseMs !== null) await rig.pass(pauseMs);
      await rig.type(reply);
      // People take a moment, but not where seconds count.
      if (!rig.key().startsWith('firstFire.oilPressure')) await rig.pass(1500);
    }
  }
  if (key !== '') throw new Error(`never came to ${key}; the session is at ${rig.key()}`);
}
