import { procedureFor } from '../../../machines/first-start.ts';
import { isOver } from '../../../machines/moment.ts';
import { type SoundChange, SoundOfFirstMinute } from '../../engineering/engine-sound/change.ts';
import type { Claim } from '../../engineering/engine-sound/claims.ts';
import type { EngineHeard } from '../../engineering/engine-sound/ear.ts';
import type { Firing } from '../../engineering/engine-sound/firing.ts';
import type { Hunting } from '../../engineering/engine-sound/hunting.ts';
import { fastestRpm, type Profile, stopsFromRpm } from '../../profile/schema.ts';
import type { Written } from '../../record/vocabulary/index.ts';
import type { EventBody } from '../hearing.ts';
import type { Session } from '../session.ts';
import { createKeeping } from './keeping.ts';
import { createOwnEngine } from './own-engine.ts';

/** What is heard of the engine now. */
export interface EngineEarState {
  readonly rpm: number | null;
  readonly trace: readonly (number | null)[];
  readonly hunting: Hunting | null;
  readonly change: SoundChange | null;
  /** Whose microphone hears it, where there are several; empty where there is one. */
  readonly microphone: string;
}

/** An ear for the engine that is joined to a session; what listens may be in another thread. */
export interface EngineEarLink {
  /**
   * Takes what was heard, about seven times a second.
   * @param microphone the name of the one that counts now, where there are several: never two at a time
   */
  take(heard: EngineHeard, microphone?: string): void;
  state(): EngineEarState;
  close(): void;
}

const TRACE_S = 60;
/** A speed stands beside an answer no longer than this. */
const FRESH_MS = 1000;
/** So long a speed has to be too high, ms, before anybody is called; and below it before they are called again. */
const TOO_FAST_MS = 500;
const CALLED_AGAIN_MS = 10_000;
/** Where the profile names none: so far above every speed that is asked for. Common practice, no published source. */
const TOO_FAST_SHARE = 1.15;
/** What stays is on the record again after so long. */
const AGAIN_MS = 60_000;

/** How the engine of a profile fires: what its sound is searched for. */
export const firingOf = ({ engine: { cylinders, strokes = 4, unevenFiringDeg } }: Profile): Firing => ({
  cylinders,
  strokes,
  unevenDeg: unevenFiringDeg,
});

/** From this speed on people are called, rpm. */
export const tooFastRpm = (profile: Profile): number =>
  stopsFromRpm(profile) ?? TOO_FAST_SHARE * fastestRpm(profile);

/**
 * Joins an ear for the engine to a session. What it hears is shown and recorded; a spoken speed that it contradicts is
 * questioned, "all off" beside an engine that it hears turning is refused, a speed too high is called out. It opens
 * nothing, and its silence means nothing.
 * @param onChange called about seven times a second, for a face
 */
export function joinEngineEar(session: Session, onChange: () => void = () => {}): EngineEarLink {
  const { clock, profile } = session.parts;
  const steps = procedureFor(profile);
  const keeping = createKeeping();
  const own = createOwnEngine();
  /** Of each microphone its own: no two hear the same engine alike. */
  const firstMinutes = new Map<string, SoundOfFirstMinute>();
  const limitRpm = tooFastRpm(profile);
  const trace: (number | null)[] = [];
  let last: (Claim & { readonly atMs: number }) | null = null;
  let second: number | null = null;
  let listensWith = '';
  let hunting: Hunting | null = null;
  let huntingKeptMs = Number.NEGATIVE_INFINITY;
  let change: SoundChange | null = null;
  let changeKeptMs = Number.NEGATIVE_INFINITY;
  let tooFastSinceMs: number | null = null;
  let calledMs = Number.NEGATIVE_INFINITY;

  const turns = () =>
    session.moment.hasTag('cranking') ||
    steps.find(({ id }) => id === session.moment.context.step)?.engine === 'running';
  const fresh = () => (last && clock.nowMs() - last.atMs <= FRESH_MS ? last : null);

  function withEar(body: EventBody): EventBody {
    if (body.type !== 'reply' && body.type !== 'value') return body;
    const heard = fresh();
    return heard && own.isHeard(clock.nowMs()) ? { ...body, ear: { speedRpm: heard.rpm } } : body;
  }

  const keep = (data: Written<'engineHeard'>) =>
    session.keep('engineHeard', { ...data, ...(listensWith === '' ? {} : { microphone: listensWith }) });

  function look(heard: EngineHeard, microphone = ''): void {
    const nowMs = clock.nowMs();
    if (isOver(session.moment)) return;
    if (microphone !== listensWith) tooFastSinceMs = null;
    listensWith = microphone;
    const { claim, happened, levelsDb, toldS } = heard;
    const speed = claim ? { rpm: claim.rpm, certainty: claim.confidence } : {};
    const isDue = claim !== null && keeping.isDue(claim.rpm, nowMs);
    if (happened) keep({ happened, ...speed });
    else if (isDue) keep(speed);
    if (claim) {
      last = { ...claim, atMs: nowMs };
      own.heard(claim.rpm, nowMs, turns());
      firstMinute().next(toldS, claim.rpm, levelsDb);
    }
    watchSpeed(claim, nowMs);
    watchIdle(heard.hunting, nowMs);
    watchChange(nowMs);
    note(Math.floor(nowMs / 1000), claim?.rpm ?? null);
    onChange();
  }

  function firstMinute(): SoundOfFirstMinute {
    const found = firstMinutes.get(listensWith) ?? new SoundOfFirstMinute();
    firstMinutes.set(listensWith, found);
    return found;
  }

  /** The last speed of each second; a gap for those in which nothing listened. */
  function note(now: number, rpm: number | null): void {
    const seconds = second === null ? 1 : Math.min(TRACE_S, now - second);
    second = now;
    for (let passed = 0; passed < seconds; passed++) trace.push(null);
    while (trace.length > TRACE_S) trace.shift();
    if (rpm !== null) trace[trace.length - 1] = Math.round(rpm);
  }

  function watchSpeed(claim: Claim | null, nowMs: number): void {
    if (!claim || claim.rpm < limitRpm) {
      tooFastSinceMs = null;
      return;
    }
    tooFastSinceMs ??= nowMs;
    if (nowMs - tooFastSinceMs < TOO_FAST_MS || nowMs - calledMs < CALLED_AGAIN_MS || !own.isHeard(nowMs))
      return;
    calledMs = nowMs;
    keep({ happened: 'overspeed', rpm: claim.rpm, certainty: claim.confidence });
    session.callOut('heardOverspeed', { speed: { unit: 'rpm', si: Math.round(claim.rpm) } });
  }

  function watchIdle(now: Hunting | null, nowMs: number): void {
    hunting = now;
    if (!hunting || nowMs - huntingKeptMs < AGAIN_MS) return;
    huntingKeptMs = nowMs;
    keep({ happened: 'hunting', ...hunting });
  }

  function watchChange(nowMs: number): void {
    change = firstMinute().change();
    if (!change || nowMs - changeKeptMs < AGAIN_MS) return;
    changeKeptMs = nowMs;
    keep({ happened: 'changed', ...change });
  }

  session.attachEngineEar(withEar);
  return {
    take: look,
    state: () => ({
      rpm: fresh()?.rpm ?? null,
      trace,
      hunting,
      change,
      microphone: listensWith,
    }),
    close() {
      session.attachEngineEar(body => body);
    },
  };
}
