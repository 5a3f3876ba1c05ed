import type { EngineEarView } from '../../../session/view.ts';
import { type Line, line } from '../line.ts';
import { cut } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

const STEPS = [...'▁▂▃▄▅▆▇█'];

/** A column for each second: from the slowest that was heard to the fastest; a gap is what was not sure. */
function traceOf(trace: EngineEarView['trace']): string {
  const heard = trace.filter(rpm => rpm !== null);
  const [low, high] = [Math.min(...heard), Math.max(...heard)];
  const span = Math.max(high - low, 0.1 * high);
  return trace
    .map(rpm => (rpm === null ? ' ' : (STEPS[Math.round(((rpm - low) / span) * (STEPS.length - 1))] ?? ' ')))
    .join('');
}

/** The speed by ear, how it went in the last minute, and what else is heard of the engine. */
export function engineEarLine(ear: EngineEarView, width: number, words: FaceWords): Line {
  const { speed, hunting, change, trace } = ear;
  const parts = [
    `${words.engineEar} ${speed ?? words.noValue}`,
    ...(hunting === undefined ? [] : [`${words.engineHunts} ${hunting}`]),
    ...(change === undefined ? [] : [`${words.soundChanged} ${change}`]),
    traceOf(trace),
  ];
  return line(cut(parts.join('  '), width), 'normal');
}
