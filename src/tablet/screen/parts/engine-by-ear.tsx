import type { EngineEarView, View } from '../../../session/view.ts';
import { words } from '../../words/index.ts';

const WIDTH = 240;
const HEIGHT = 56;
const LEAST_SPAN = 0.1;

/** Lines through what was sure, a gap where nothing was; the newest at the right. */
export function pathOf(trace: EngineEarView['trace'], low: number, high: number): string {
  const perSecond = WIDTH / Math.max(1, trace.length - 1);
  let down = false;
  return trace
    .map((rpm, i) => {
      if (rpm === null) {
        down = false;
        return '';
      }
      const [x, y] = [i * perSecond, HEIGHT * (1 - (rpm - low) / (high - low))];
      const move = down ? 'L' : 'M';
      down = true;
      return `${move}${x.toFixed(1)} ${y.toFixed(1)}`;
    })
    .join('');
}

/** What the microphone hears of the engine: its speed, and how it went in the last minute. Nothing is judged by it. */
export function EngineByEar({ view }: { readonly view: Pick<View, 'engineEar' | 'engine'> }) {
  if (!view.engineEar) return null;
  const { speed, trace, hunting, change, microphone } = view.engineEar;
  const heard = trace.filter(rpm => rpm !== null);
  // Beside an engine that stands and is not heard there is nothing to know.
  if (view.engine === 'off' && speed === null && heard.length === 0) return null;
  const [least, most] = [Math.min(...heard), Math.max(...heard)];
  const spare = Math.max(0, LEAST_SPAN * most - (most - least)) / 2;
  const [low, high] = [Math.floor(least - spare), Math.ceil(most + spare)];
  return (
    <section aria-labelledby="by-ear" className="by-ear">
      <h2 id="by-ear">{words.engineByEar.title}</h2>
      <p>
        <strong>{speed ?? words.engineByEar.notSure}</strong>
        {hunting === undefined ? '' : ` ${words.engineByEar.hunts} ${hunting}.`}
        {change === undefined ? '' : ` ${words.engineByEar.changed} ${change}.`}
      </p>
      {microphone !== undefined && (
        <p className="quiet">
          {words.engineByEar.microphone} {microphone}
        </p>
      )}
      {heard.length > 1 && (
        <figure>
          <span className="quiet">{high}</span>
          <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words.engineByEar.trace}>
            <path d={pathOf(trace, low, high)} />
          </svg>
          <span className="quiet">{low}</span>
          <figcaption className="quiet">{words.engineByEar.trace}</figcaption>
        </figure>
      )}
    </section>
  );
}
