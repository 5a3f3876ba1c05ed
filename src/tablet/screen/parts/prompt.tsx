import type { View } from '../../../session/view.ts';
import { signalOf } from '../../face/signal-word.ts';
import { words } from '../../words.ts';

/** Longer sentences are set smaller, so that they stay in sight with their answers. */
const LONG = 90;
const VERY_LONG = 180;

const sizeOf = ({ length }: string) => (length > VERY_LONG ? 'longest' : length > LONG ? 'long' : 'short');

/** What is asked, and whom. */
export function Prompt({ view }: { readonly view: View }) {
  const signal = signalOf(view.prompt);
  return (
    <section className="asked" aria-live="polite" aria-atomic="true" data-key={view.key}>
      <h1>{view.title}</h1>
      {view.remark !== undefined && <p className="remark">{view.remark}</p>}
      <p className={`prompt ${sizeOf(view.prompt)} ${signal ?? ''}`}>{view.prompt}</p>
      <p className="addressed">
        {words.for} {view.addressedName}
      </p>
    </section>
  );
}
