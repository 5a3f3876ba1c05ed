import { useEffect, useState } from 'react';
import type { View } from '../../session/view.ts';
import { Throttle } from './throttle.ts';

/** What a face is shown: a `Viewer`, or anything that answers like one. */
export interface Watched {
  view(): View;
  watch(changed: () => void): () => void;
  /** Whether what the view asks for may be answered already; without it, always. */
  isAsked?(): boolean;
}

/** Level and clock change often; nobody reads faster than this. */
const REDRAW_MS = 80;
const TICK_MS = 250;

/** The view as it is now: looked at again when something changed, and while a timer runs. */
export function useView(viewer: Watched): View {
  const [view, setView] = useState(() => viewer.view());
  useEffect(() => {
    const throttle = new Throttle(() => setView(viewer.view()), REDRAW_MS);
    const unwatch = viewer.watch(throttle.ask);
    throttle.ask();
    return () => {
      unwatch();
      throttle.cancel();
    };
  }, [viewer]);
  const ticking = view.timer !== null && !view.timer.held;
  useEffect(() => {
    if (!ticking) return;
    const ticker = setInterval(() => setView(viewer.view()), TICK_MS);
    return () => clearInterval(ticker);
  }, [ticking, viewer]);
  return view;
}
