import type { View } from '../../../session/view.ts';
import { words } from '../../words/index.ts';
import type { Touch } from '../use-touch.ts';
import { NumberPad } from './number-pad.tsx';

/** What may be answered now, as large controls: the one asked for first. */
export function Answers({
  view,
  touch,
  clear = false,
}: {
  readonly view: View;
  readonly touch: Touch;
  /** The second person's own clear is asked for: nothing on their screen is larger. */
  readonly clear?: boolean;
}) {
  if (view.outcome) return null;
  const nothing = view.choices.length === 0 && !view.number;
  if (nothing) return <p className="quiet">{view.timer ? words.timeRuns : words.waiting}</p>;
  return (
    <section className={view.number ? 'answers with-number' : 'answers'} aria-label={words.answer}>
      {view.number && <NumberPad key={view.key} number={view.number} touch={touch} />}
      {view.choices.length > 0 && (
        <div className="choices">
          {view.choices.map((choice, index) => (
            <button
              type="button"
              key={choice}
              aria-disabled={!touch.ready}
              className={index > 0 || view.number ? 'choice' : clear ? 'choice first clear' : 'choice first'}
              onClick={() => touch.say(choice)}
            >
              {choice}
            </button>
          ))}
        </div>
      )}
    </section>
  );
}

/** The words that are always understood. */
export function Controls({ view, touch }: { readonly view: View; readonly touch: Touch }) {
  if (view.outcome || view.controls.length === 0) return null;
  return (
    <section className="controls" aria-label={words.also}>
      {view.controls.map(control => (
        <button
          type="button"
          key={control}
          className="control"
          aria-disabled={!touch.ready}
          onClick={() => touch.say(control)}
        >
          {control}
        </button>
      ))}
    </section>
  );
}
