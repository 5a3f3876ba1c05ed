import { type FocusEvent, type KeyboardEvent, type ReactNode, useLayoutEffect, useRef } from 'react';
import type { FaceState } from '../../face/face.ts';
import { offOf } from '../../face/stop-state.ts';
import { inOwnWords, words } from '../../words/index.ts';
import { Alerts } from './alerts.tsx';
import { Band } from './band.tsx';
import { Ear } from './ear.tsx';
import { Question } from './question.tsx';
import { Stop } from './stop.tsx';

/** A key that is held down is one answer. */
const once = (event: KeyboardEvent) => {
  const onButton = event.target instanceof HTMLButtonElement;
  if (event.repeat && onButton && (event.key === 'Enter' || event.key === ' ')) event.preventDefault();
};

/** Nothing can be running that an Escape from a text field would have to stop. */
const isKnownToStand = ({ view, bay }: FaceState): boolean =>
  view === null
    ? bay?.link.state === 'connected' && !bay.lost
    : view.outcome !== null || (view.engine === 'off' && view.timer === null);

/** Where the focus was has gone with the question before: it goes to the new one, not to the top of the page. */
function useFocusThatStays(turn: string) {
  const last = useRef<Element | null>(null);
  const question = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: with each question, whatever else has changed
  useLayoutEffect(() => {
    const lost = last.current !== null && !last.current.isConnected;
    if (lost && document.activeElement === document.body) question.current?.focus({ preventScroll: true });
  }, [turn]);
  return {
    question,
    onFocus: ({ target }: FocusEvent) => {
      last.current = target;
    },
  };
}

/** What was scrolled for one question is not carried to the next. */
function useTopForEach(turn: string) {
  const body = useRef<HTMLDivElement>(null);
  const work = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: with each question
  useLayoutEffect(() => {
    const toTop = () => {
      for (const { current } of [body, work]) current?.scrollTo(0, 0);
    };
    toTop();
    // A field that keeps the focus is brought back into sight by the browser once all is in its place.
    const after = requestAnimationFrame(() => requestAnimationFrame(toTop));
    return () => cancelAnimationFrame(after);
  }, [turn]);
  return { body, work };
}

/**
 * The frame of every screen of a session, the same for all roles. From the top: where this is, how the engine is and
 * the time that runs; what calls for attention; what is asked; then, and only this scrolls, what may be answered and
 * what else there is to see; what was heard; and the stop control at its edge of the screen.
 */
export function Shell({
  state,
  onStop,
  onUseHere,
  beside,
  aside,
  children,
}: {
  readonly state: FaceState;
  readonly onStop: () => void;
  /** Takes the line back from another tab. */
  readonly onUseHere?: (() => void) | undefined;
  /** What is looked at, and never has to be touched in a hurry. */
  readonly beside?: ReactNode;
  /** What is touched in a hurry besides STOP, and far from it: it keeps its place too. */
  readonly aside?: ReactNode;
  /** What is answered. */
  readonly children: ReactNode;
}) {
  const { turn, view, bay } = state;
  const { question, onFocus } = useFocusThatStays(turn);
  const { body, work } = useTopForEach(turn);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it takes repeated keys from the controls inside
    <div
      className="shell"
      data-over={view?.outcome ?? undefined}
      onKeyDown={once}
      onFocus={onFocus}
      onContextMenu={event => event.preventDefault()}
    >
      <main className="frame" aria-label={words.name}>
        <Band state={state} />
        <Alerts state={state} />
        <div className="stage">
          <Question state={state} place={question} />
          <div className="body" ref={body}>
            <div className="work" ref={work}>
              {onUseHere && bay?.link.refusal?.code === 'replaced' && (
                <section className="controls">
                  <button type="button" onClick={onUseHere}>
                    {words.link.useHere}
                  </button>
                </section>
              )}
              {children}
            </div>
            {beside && (
              // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and has to by keys too
              <section className="beside" aria-label={words.beside} tabIndex={0}>
                {beside}
              </section>
            )}
          </div>
        </div>
        <p className="refusal" role="status">
          {inOwnWords(state.bay?.refusal ?? '')}
        </p>
        {view && <Ear hearing={view.hearing} />}
      </main>
      {aside}
      <Stop onStop={onStop} standing={isKnownToStand(state)} off={offOf(view)} />
    </div>
  );
}
