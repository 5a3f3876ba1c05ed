import { useEffect } from 'react';
import { vibrate } from '../device/vibrate.ts';
import { keepAwake } from '../device/wake-lock.ts';
import type { BaySession } from '../remote/bay-session.ts';
import { words } from '../words.ts';
import { Answers } from './parts/answers.tsx';
import { Ear } from './parts/ear.tsx';
import { Hazard } from './parts/hazard.tsx';
import { Head } from './parts/head.tsx';
import { Leave } from './parts/leave.tsx';
import { LinkLine } from './parts/link-line.tsx';
import { Problems } from './parts/problems.tsx';
import { Prompt } from './parts/prompt.tsx';
import { Shell } from './parts/shell.tsx';
import { Timer } from './parts/timer.tsx';
import { unpair } from './unpair.ts';
import { useFace } from './use-face.ts';
import { useTouch } from './use-touch.ts';

/** The second person's phone: hazards, what they have to look at, and their own clear. */
export function Second({ session, onLeave }: { readonly session: BaySession; readonly onLeave: () => void }) {
  const state = useFace(session);
  const { view, turn, takenAtMs, bay } = state;
  const touch = useTouch(session, turn);
  useEffect(keepAwake, []);
  const asked = view?.addressed === 'second' || bay?.clear === 'needed';
  useEffect(() => {
    if (asked) vibrate('asked');
  }, [asked]);
  return (
    <Shell label={words.name} state={state} onStop={() => session.stop()}>
      {bay && <LinkLine bay={bay} />}
      {!view && bay && <Problems problems={bay.troubles} />}
      {view && (
        <>
          <Head view={view} />
          <Hazard log={view.log} />
          <Problems problems={view.problems} />
          {bay?.clear === 'needed' && (
            <button
              type="button"
              className="choice first clear"
              aria-disabled={!touch.ready}
              onClick={() => touch.once(() => session.bay?.giveClear(turn))}
            >
              {words.second.clear}
              <small>{words.second.clearAsk}</small>
            </button>
          )}
          {bay?.clear === 'given' && <p className="banner good">{words.second.given}</p>}
          {view.addressed === 'second' ? (
            <>
              <Prompt view={view} />
              <Answers view={view} touch={touch} />
            </>
          ) : (
            <p className="prompt long">{words.second.nothing}</p>
          )}
          {view.timer && <Timer timer={view.timer} takenAtMs={takenAtMs} />}
          <Ear hearing={view.hearing} />
        </>
      )}
      <Leave onLeave={onLeave} onUnpair={() => unpair(session.bay, bay?.device, onLeave)} />
    </Shell>
  );
}
