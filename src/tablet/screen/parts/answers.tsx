import type { View } from '../../../session/view.ts';
import { words } from '../../words.ts';
import { NumberPad } from './number-pad.tsx';

/** What may be answered now, as large controls: the one asked for first. */
export function Answers({ view, onSay }: { readonly view: View; readonly onSay: (text: string) => void }) {
  if (view.outcome) return null;
  const nothing = view.choices.length === 0 && !view.number;
  return (
    <section className="answers" aria-label={words.answer}>
      {nothing && <p className="quiet">{words.waiting}</p>}
      {view.number && <NumberPad key={view.key} number={view.number} onSay={onSay} />}
      {view.choices.length > 0 && (
        <div className="choices">
          {view.choices.map((choice, index) => (
            <button
              type="button"
              key={choice}
              className={index === 0 && !view.number ? 'choice first' : 'choice'}
              onClick={() => onSay(choice)}
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
export function Controls({ view, onSay }: { readonly view: View; readonly onSay: (text: string) => void }) {
  if (view.outcome) return null;
  return (
    <section className="controls" aria-label={words.also}>
      {view.controls.map(control => (
        <button type="button" key={control} className="control" onClick={() => onSay(control)}>
          {control}
        </button>
      ))}
    </section>
  );
}
