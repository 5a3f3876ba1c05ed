import type { RefObject } from 'react';
import { isAnsweredHere } from '../../face/addressee.ts';
import type { FaceState } from '../../face/face.ts';
import { promptParts } from '../../face/long-prompt.ts';
import { signalOf } from '../../face/signal-word.ts';
import { words } from '../../words/index.ts';
import { useFittingText } from './fitting-text.ts';

/** Who is asked, as it is said to whoever holds this device. */
const addresseeOf = (state: FaceState): string => {
  const { view, role } = state;
  if (!view || view.outcome) return '';
  if (view.addressed === role && role !== 'technician') return words.asked.you;
  return isAnsweredHere(state) ? words.asked.one(view.addressedName) : words.asked.other(view.addressedName);
};

/** What is asked, and whom; as large as it can be with its answers in sight. Before a session: what is waited for. */
export function Question({
  state,
  place,
}: {
  readonly state: FaceState;
  readonly place: RefObject<HTMLElement | null>;
}) {
  const { view, role, turn, bay } = state;
  const prompt = view
    ? promptParts(view.prompt).question
    : words.waitingFor[bay?.link.state === 'connected' ? role : 'nobody'];
  useFittingText(place, `${turn} ${prompt}`);
  const tone = [view && !view.outcome && !isAnsweredHere(state) ? 'others' : '', signalOf(prompt) ?? ''].join(
    ' ',
  );
  return (
    <section
      ref={place}
      className={`asked ${tone}`}
      aria-live="polite"
      aria-atomic="true"
      data-key={view?.key}
      data-turn={turn}
      tabIndex={-1}
    >
      {view && (
        <p className="whom">
          <strong>{addresseeOf(state)}</strong> <span>{view.title}</span>
        </p>
      )}
      <h1 className="prompt">{prompt}</h1>
    </section>
  );
}
