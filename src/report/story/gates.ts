import type { Step } from '../../../machines/steps.ts';
import type { Recorded } from '../../record/vocabulary/index.ts';
import type { GateStory, JudgedStep, PassedStep, ReadingVerdict } from '../model.ts';
import type { Replay } from '../replay.ts';

/** Each step's last passing, and whether a stop or going back has taken it back since. */
export function passedSteps(
  entries: readonly Recorded[],
  replay: Replay | undefined,
): Map<string, PassedStep> {
  const steps = new Map<string, PassedStep>();
  for (const entry of entries) {
    if (entry.kind === 'passed') {
      const { step, by, misheard } = entry.data;
      steps.set(step, { step, timeMs: entry.timeMs, by: by ?? '', misheard: misheard ?? 0, reopened: false });
    } else if (entry.kind === 'reopened') {
      for (const id of entry.data.steps) {
        const step = steps.get(id);
        if (step) steps.set(id, { ...step, reopened: true });
      }
    }
  }
  if (!replay) return steps;
  const done: readonly string[] = replay.last.context.done;
  return new Map([...steps].map(([id, step]) => [id, { ...step, reopened: !done.includes(id) }]));
}

interface Holder {
  readonly step: string;
  readonly gate: string | null;
  /** Whether the step has to be done in this session. */
  readonly applies: boolean;
}

/** Which steps hold which gate: by the procedure where it can be replayed, else by what the record says. */
function holdersOf(entries: readonly Recorded[], replay: Replay | undefined): Holder[] {
  if (replay) {
    const { context } = replay.last;
    return replay.steps.map((step: Step) => ({
      step: step.id,
      gate: step.gate ?? null,
      applies: step.when?.(context) ?? true,
    }));
  }
  const seen = new Map<string, Holder>();
  for (const entry of entries) {
    if (entry.kind === 'passed')
      seen.set(entry.data.step, { step: entry.data.step, gate: entry.data.gate ?? null, applies: true });
    if (entry.kind === 'verdict' && !seen.has(entry.data.step))
      seen.set(entry.data.step, { step: entry.data.step, gate: null, applies: true });
  }
  return [...seen.values()];
}

/** Weather, place and amounts, which only have to be possible: what is wrong with the engine holds the work up. */
export const isFigure = ({ rule }: ReadingVerdict) => rule === 'plausible-range';

/** Every gate with what was confirmed and read for it; last, the readings that open no gate. */
export function gatesOf(
  entries: readonly Recorded[],
  judged: readonly JudgedStep[],
  replay: Replay | undefined,
): GateStory[] {
  const passed = passedSteps(entries, replay);
  const holders = holdersOf(entries, replay);
  const readingsOf = (ids: readonly string[]) => judged.filter(({ step }) => ids.includes(step));
  const gates = [...new Set(holders.flatMap(({ gate }) => (gate === null ? [] : [gate])))];
  const stories = gates.map((gate): GateStory => {
    const own = holders.filter(holder => holder.gate === gate);
    const isDone = (step: string) => passed.get(step)?.reopened === false;
    const done = own.filter(({ step }) => isDone(step)).map(({ step }) => step);
    const missing = own.filter(({ step, applies }) => applies && !isDone(step)).map(({ step }) => step);
    const met = missing.length === 0 && done.length > 0;
    const last = done
      .flatMap(step => passed.get(step) ?? [])
      .reduce<PassedStep | undefined>((a, b) => (a && a.timeMs > b.timeMs ? a : b), undefined);
    const readings = readingsOf(own.map(({ step }) => step));
    return {
      gate,
      met,
      ...(met && last ? { metAtMs: last.timeMs, by: last.by } : {}),
      confirmed: done.filter(step => !readings.some(reading => reading.step === step)),
      missing,
      readings,
    };
  });
  const gated = new Set(stories.flatMap(({ readings }) => readings));
  const others = judged.filter(reading => !gated.has(reading));
  const ungated = (holdsUp: boolean): GateStory[] => {
    const readings = others.filter(
      ({ last }) => (last.verdict !== undefined && isFigure(last.verdict)) !== holdsUp,
    );
    return readings.length === 0
      ? []
      : [{ gate: null, holdsUp, met: true, confirmed: [], missing: [], readings }];
  };
  return [...stories, ...ungated(true), ...ungated(false)];
}
