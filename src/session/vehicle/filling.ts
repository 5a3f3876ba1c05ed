import { type BusQuantity, isBusQuantity } from '../../../machines/limits/agreement.ts';
import { isOver, type Moment, offerOf } from '../../../machines/moment.ts';
import type { ReadingStep, Step } from '../../../machines/steps.ts';
import type { EventBody } from '../hearing.ts';
import type { VehicleLook } from './vehicle.ts';

/** An answer that the machine did not take is not given again at once. */
const LEAST_MS = 1000;
/** Common practice, no published source: a series spread out so that hunting shows, a speed that is really held. */
const SAMPLE_EVERY_MS = 2000;
const SPEED_WITHIN_RPM = 50;
const SPEED_HELD_MS = 2000;
/** What was outside its limits is not said again and again. */
const AGAIN_AFTER_MS = 120_000;
/** Just before the question would be put again. */
const BEFORE_LOOK_MS = 1500;

/** Decides when a value of the bus answers the question at hand. The machine decides whether it counts. */
export function createFiller(steps: readonly Step[]) {
  let sentAt: Moment | null = null;
  let last: { readonly step: string; readonly atMs: number } | null = null;
  let heldSince: { readonly rpm: number; readonly sinceMs: number } | null = null;

  /** Since when the engine has kept the speed that the step asks for. */
  function speedHeld(atRpm: number | undefined, nowMs: number, look: VehicleLook): boolean {
    if (atRpm === undefined) return true;
    const speedRpm = look.value('engineSpeed');
    if (speedRpm === null || Math.abs(speedRpm - atRpm) > SPEED_WITHIN_RPM) heldSince = null;
    else if (heldSince?.rpm !== atRpm) heldSince = { rpm: atRpm, sinceMs: nowMs };
    return heldSince !== null && nowMs - heldSince.sinceMs >= SPEED_HELD_MS;
  }

  const sinceLast = (step: Step, nowMs: number) =>
    last?.step === step.id ? nowMs - last.atMs : Number.POSITIVE_INFINITY;

  function readingDue(step: ReadingStep, moment: Moment, nowMs: number, si: number, look: VehicleLook) {
    switch (offerOf(moment).measures) {
      case 'once': {
        if (!speedHeld(step.atRpm, nowMs, look)) return false;
        const judgement = step.judge(moment.context, si, nowMs);
        return (judgement.ok && judgement.value.met) || sinceLast(step, nowMs) >= AGAIN_AFTER_MS;
      }
      case 'first':
        return sinceLast(step, nowMs) >= AGAIN_AFTER_MS;
      case 'next':
        return sinceLast(step, nowMs) >= SAMPLE_EVERY_MS;
      default:
        return false;
    }
  }

  const watchDue = (moment: Moment, nowMs: number) =>
    offerOf(moment).measures === 'now' ||
    (offerOf(moment).measures === 'later' && (moment.context.nextLookMs ?? 0) - nowMs <= BEFORE_LOOK_MS);

  function due(step: Step, moment: Moment, nowMs: number, look: VehicleLook): EventBody | null {
    if (step.kind === 'faults') {
      const codes = offerOf(moment).measures === 'codes' ? look.codes() : null;
      return codes && { type: 'codes', codes };
    }
    const quantity = quantityOf(step, moment);
    const si = quantity && look.value(quantity);
    if (!quantity || si === null) return null;
    const isDue =
      step.kind === 'reading' ? readingDue(step, moment, nowMs, si, look) : watchDue(moment, nowMs);
    return isDue ? { type: 'value', quantity, si } : null;
  }

  return {
    /** The event that answers what is asked now, or null; given once for each moment of the session. */
    next(moment: Moment, nowMs: number, look: VehicleLook): EventBody | null {
      if (moment === sentAt || isOver(moment) || !moment.matches('procedure')) return null;
      const step = steps.find(({ id }) => id === moment.context.step);
      // What was misunderstood, or can hardly be true, is for people to say.
      if (moment.context.misheard > 0 || moment.context.doubted !== null) return null;
      if (!step || sinceLast(step, nowMs) < LEAST_MS) return null;
      const body = due(step, moment, nowMs, look);
      if (!body) return null;
      sentAt = moment;
      last = { step: step.id, atMs: nowMs };
      return body;
    },
  };
}

/** What the step reads, where the profile lets the bus give it. */
function quantityOf(step: Step, { context }: Moment): BusQuantity | null {
  const reading = step.kind === 'reading' ? step : step.kind === 'watch' ? step.reading : undefined;
  const quantity = reading?.quantity;
  const { bus } = context.profile;
  return quantity &&
    isBusQuantity(quantity) &&
    bus?.readings.includes(quantity) &&
    !bus.spoken.includes(quantity)
    ? quantity
    : null;
}
