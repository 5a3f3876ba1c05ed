import { isRestart, ofKind, type Recorded } from '../../record/vocabulary/index.ts';
import type { EngineSpan, PhaseSpan, Span, StopStory, TimeLine } from '../model.ts';
import type { Replay } from '../replay.ts';
import { phaseOfStep } from './phases.ts';

/** Joins points that hold until the next one into stretches of equal value, without those that are null. */
function spansOf<T>(points: readonly { timeMs: number; value: T | null }[], endMs: number) {
  const spans: (Span & { value: T })[] = [];
  points.forEach(({ timeMs, value }, index) => {
    const last = spans.at(-1);
    const toMs = points[index + 1]?.timeMs ?? endMs;
    if (value === null) return;
    // A span that reaches up to here goes on while its value stays the same.
    if (last && last.toMs === timeMs && last.value === value) spans[spans.length - 1] = { ...last, toMs };
    else spans.push({ value, fromMs: timeMs, toMs });
  });
  return spans.filter(({ fromMs, toMs }) => toMs > fromMs);
}

/** When what was done: phases, stops and holds from the record, the engine from its replay. */
export function timeLineOf(
  entries: readonly Recorded[],
  stops: readonly StopStory[],
  replay: Replay | undefined,
): TimeLine {
  const events = entries.filter(ofKind('event'));
  const endMs = entries.at(-1)?.timeMs ?? 0;
  const atState = <T>(value: (state: string) => T | null) =>
    events.map(({ timeMs, data }) => ({ timeMs, value: value(data.state) }));

  const begin = { timeMs: 0, value: 'job' };
  const phases: PhaseSpan[] = spansOf(events.length > 0 ? [begin, ...atState(phaseOfStep)] : [], endMs).map(
    ({ value, fromMs, toMs }) => ({ phase: value, fromMs, toMs }),
  );
  const held = spansOf(
    atState(state => (state === 'held' ? state : null)),
    endMs,
  ).map(({ fromMs, toMs }) => ({ fromMs, toMs }));
  const engine: EngineSpan[] | null = replay
    ? spansOf(
        replay.moments.map(({ timeMs, engine }) => ({ timeMs, value: engine === 'off' ? null : engine })),
        endMs,
      ).map(({ value, fromMs, toMs }) => ({ engine: value, fromMs, toMs }))
    : null;
  return {
    phases,
    held,
    engine,
    endMs,
    stops: stops.map(stop => ({ fromMs: stop.timeMs, toMs: stop.wentOnMs ?? endMs, drill: stop.drill })),
    restartsMs: entries.filter(({ kind }) => isRestart(kind)).map(({ timeMs }) => timeMs),
  };
}
