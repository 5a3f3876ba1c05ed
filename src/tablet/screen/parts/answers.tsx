import type { View } from '../../../session/view.ts';
import { words } from '../../words.ts';
import type { Touch } from '../use-touch.ts';
import { NumberPad } from './number-pad.tsx';

/** What may be answered now, as large controls: the one asked for first. */
export function Answers({ view, touch }: { readonly view: View; readonly touch: Touch }) {
  if (view.outcome) return null;
  const nothing = view.choices.length === 0 && !view.number;
  return (
    <section className="answers" aria-label={words.answer}>
      {nothing && <p className="quiet">{words.waiting}</p>}
      {view.number && <NumberPad key={view.key} number={view.number} touch={touch} />}
      {view.choices.length > 0 && (
        <div className="choices">
          {view.choices.map((choice, index) => (
            <button
              type="button"
              key={choice}
              aria-disabled={!touch.ready}
              className={index === 0 && !view.number ? 'choice first' : 'choice'}
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
  if (view.outcome) return null;
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
