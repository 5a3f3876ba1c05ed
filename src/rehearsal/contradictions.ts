import { procedureFor } from '../../machines/first-start.ts';
import { judgeSpoken } from '../../machines/limits/agreement.ts';
import type { Moment } from '../../machines/moment.ts';
import type { Step } from '../../machines/steps.ts';
import type { Quantity } from '../../machines/vocabulary.ts';
import type { StepId } from '../../prompts/types.ts';
import type { Profile } from '../profile/schema.ts';
import type { Gauges } from './gauges.ts';
import { gaugeValue } from './trainee/gauge-value.ts';

/** An answer that the engine's gauges, or eyes at the engine, say is not so. */
export interface Contradiction {
  readonly step: StepId;
  /** Session time. */
  readonly atMs: number;
  /** A number, with what the gauge showed; in SI. None where something was confirmed that was not so. */
  readonly value?: { readonly quantity: Quantity; readonly said: number; readonly shown: number };
}

/** Whether a step may be said to be done by what there is to see; true where nothing can be seen of it. */
function isSo(step: Step, gauges: Gauges, profile: Profile): boolean {
  if (step.kind === 'inspect')
    return !step.points.some(({ id }) =>
      id === 'anyLeak' ? gauges.wrongAt.size > 0 : gauges.wrongAt.has(id),
    );
  if (step.kind === 'lamps' && step.expected === 'running')
    return step.lamps.every(({ id, running }) => gauges.lit.has(id) === (running === 'on'));
  switch (step.id) {
    case 'prime.electricBled':
    case 'prime.firm':
      return gauges.primerFirm;
    case 'fill.coolantBled':
      return !gauges.coolantAir;
    case 'firstFire.oilPressure':
    case 'firstRun.oilPressure':
      return gauges.oilPressureKpa >= profile.oilPressure.showsKpa;
    case 'checks.fixedSpeed':
    case 'checks.idle':
      return !gauges.hunting;
    case 'warmUp.hose':
      return gauges.upperHoseHot;
    case 'warmUp.steeringLocks':
      return !gauges.steeringAir;
    case 'signOff.coolantLevel':
      return !gauges.coolantShort;
    default:
      return true;
  }
}

/** Follows a session beside the engine, and collects what was answered against it. */
export function createContradictions(profile: Profile, ambientC: number) {
  const steps = new Map(procedureFor(profile).map(step => [step.id, step]));
  const found: Contradiction[] = [];
  let before: Moment['context'] | null = null;
  /** With an answer people go on: what they saw is what there was to see just before it. */
  let gaugesBefore: Gauges | null = null;

  return {
    found,
    /** To be called with every look at the engine: what has been answered since the last one is held against it. */
    look({ context }: Moment, gauges: Gauges, atMs: number): void {
      const last = before;
      const sight = gaugesBefore ?? gauges;
      before = context;
      gaugesBefore = gauges;
      // Nothing was answered since: that is how most looks are.
      if (context === last) return;
      const readings = last?.readings ?? [];
      const done = last?.done ?? [];
      for (const { quantity, si, step, byBus } of context.readings.slice(readings.length)) {
        // What nobody said is nobody's answer.
        if (byBus) continue;
        const shown = gaugeValue(quantity, gauges, profile, ambientC);
        const agrees = (seen: Gauges) =>
          judgeSpoken(quantity, si, gaugeValue(quantity, seen, profile, ambientC) ?? undefined)?.met !==
          false;
        if (shown !== null && !agrees(gauges) && !agrees(sight))
          found.push({ step, atMs, value: { quantity, said: si, shown } });
      }
      for (const id of context.done) {
        const step = steps.get(id);
        const left = context.openItems.some(item => item.step === id);
        const skipped = context.skips.some(skip => skip.step === id);
        if (done.includes(id) || left || skipped || !step) continue;
        if (![gauges, sight].some(seen => isSo(step, seen, profile))) found.push({ step: id, atMs });
      }
    },
  };
}
