import type { View } from '../../../session/view.ts';
import { confirms } from '../../face/confirms.ts';
import { words } from '../../words/index.ts';
import type { Touch } from '../use-touch.ts';
import { NumberPad } from './number-pad.tsx';

/** What may be answered now, as large controls: the one asked for first. */
function Choices({
  view,
  touch,
  clear,
}: {
  readonly view: View;
  readonly touch: Touch;
  readonly clear: boolean;
}) {
  const { choices, number } = view;
  if (choices.length === 0) return null;
  // While a stop is tried out nothing is more to be touched than STOP.
  const isSecondary = (number && !confirms(view)) || view.emergencyWord !== undefined;
  const first = isSecondary ? '' : clear ? 'first clear' : 'first';
  return (
    <div className="choices">
      {choices.map((choice, index) => (
        <button
          type="button"
          key={choice}
          aria-disabled={!touch.ready}
          className={index === 0 ? `choice ${first}` : 'choice'}
          onClick={() => touch.say(choice)}
        >
          <span className="said">{choice}</span>
        </button>
      ))}
    </div>
  );
}

/** The words that are always understood. */
function Controls({ view, touch }: { readonly view: View; readonly touch: Touch }) {
  if (view.controls.length === 0) return null;
  return (
    <section className="controls" aria-label={words.also}>
      {view.controls.map((control, index) => (
        <button
          type="button"
          key={control}
          // On hold nothing is answered: to go on is what there is to do.
          className={view.state === 'held' && index === 0 ? 'control first' : 'control'}
          aria-disabled={!touch.ready}
          onClick={() => touch.say(control)}
        >
          <span className="said">{control}</span>
        </button>
      ))}
    </section>
  );
}

/** Everything that may be answered or said on this device now. */
export function Answers({
  view,
  touch,
  asked,
  controls = false,
  clear = false,
}: {
  readonly view: View;
  readonly touch: Touch;
  /** The question is answered here; somebody else's is only known of. */
  readonly asked: boolean;
  /** The words that are always understood are said here too. */
  readonly controls?: boolean;
  /** The second person's own clear is asked for: nothing on their screen is larger. */
  readonly clear?: boolean;
}) {
  if (view.outcome) return null;
  // The drill is a stop: whoever has to give it here finds nothing else to touch, but for who leads.
  const drills = asked && view.emergencyWord !== undefined;
  const nothing = asked && !drills && view.choices.length === 0 && !view.number;
  const pad = asked && view.number && <NumberPad key={view.key} number={view.number} touch={touch} />;
  // A number that was read back is agreed to or not; it is seldom typed anew.
  const confirmed = asked && confirms(view);
  const classes = ['answers', pad ? 'with-number' : '', confirmed ? 'confirms' : ''];
  return (
    <section className={classes.filter(each => each !== '').join(' ')} aria-label={words.answer}>
      {drills && <p className="drill">{words.touchStop}</p>}
      {nothing && <p className="quiet">{view.timer ? words.timeRuns : words.waiting}</p>}
      {!confirmed && pad}
      <div className="else">
        {asked && !(drills && !controls) && <Choices view={view} touch={touch} clear={clear} />}
        {controls && <Controls view={view} touch={touch} />}
      </div>
      {confirmed && pad}
    </section>
  );
}
