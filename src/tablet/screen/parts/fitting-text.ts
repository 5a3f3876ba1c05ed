import { type RefObject, useLayoutEffect } from 'react';

/** Letters of 49 px have a cap height of 35 px: 16 minutes of arc at two metres. The largest that fits is taken. */
const SIZES_REM = [3.75, 3.25, 2.75, 2.375, 2, 1.75, 1.5, 1.3125, 1.1875, 1.0625, 1];
/** A line holds at least so many letters' heights: below that words would be broken. */
const LINE_IN_SIZES = 8;
/** Of the height that question and answers share. */
const LEAST = 0.2;
/** Below the answers. */
const GAP_PX = 4;
const MOST = 0.6;
/** What somebody else is asked is only to be known. */
const MOST_OF_OTHERS = 0.3;

/** From the top of what scrolls to the lower end of this part of it, were nothing scrolled. */
function heightDownTo(part: HTMLElement): number {
  const body = part.closest<HTMLElement>('.body');
  if (!body) return part.offsetHeight;
  return part.getBoundingClientRect().bottom - body.getBoundingClientRect().top + body.scrollTop;
}

/** How high a question may be, so that its answers stay in sight where they can. */
function roomFor(question: HTMLElement, stage: HTMLElement): number {
  const { clientHeight: whole } = stage;
  if (getComputedStyle(stage).flexDirection === 'row') return whole;
  const answers =
    stage.querySelector<HTMLElement>('.answers:not(.confirms) > .pad') ??
    stage.querySelector<HTMLElement>('.choices');
  const left =
    whole - (answers ? heightDownTo(answers) : 0) - (question.offsetHeight - question.clientHeight) - GAP_PX;
  const most = question.classList.contains('others') ? MOST_OF_OTHERS : MOST;
  return Math.min(most * whole, Math.max(LEAST * whole, left));
}

function fitInto(question: HTMLElement): void {
  const stage = question.parentElement;
  if (!stage) return;
  const remPx = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  const room = roomFor(question, stage);
  const widest = question.clientWidth / LINE_IN_SIZES / remPx;
  const sizes = SIZES_REM.filter(size => size <= Math.max(widest, 1));
  for (const size of sizes) {
    question.style.setProperty('--asked-size', `${size}rem`);
    if (question.scrollHeight <= room) return;
  }
}

/** Sets what is asked as large as its place allows: anew for each text, and whenever the place changes. */
export function useFittingText(place: RefObject<HTMLElement | null>, text: string): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new text is why it is fitted anew
  useLayoutEffect(() => {
    const question = place.current;
    if (!question?.parentElement) return;
    fitInto(question);
    const watcher = new ResizeObserver(() => fitInto(question));
    watcher.observe(question.parentElement);
    const answers = question.parentElement.querySelector('.answers');
    if (answers) watcher.observe(answers);
    return () => watcher.disconnect();
  }, [place, text]);
}
