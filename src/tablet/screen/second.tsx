import { useEffect } from 'react';
import { vibrate } from '../device/vibrate.ts';
import { keepAwake } from '../device/wake-lock.ts';
import { isAnsweredHere } from '../face/addressee.ts';
import type { BaySession } from '../remote/bay-session.ts';
import { words } from '../words/index.ts';
import { Answers } from './parts/answers.tsx';
import { Leave } from './parts/leave.tsx';
import { LinkLine } from './parts/link-line.tsx';
import { Problems } from './parts/problems.tsx';
import { Remark } from './parts/remark.tsx';
import { Shell } from './parts/shell.tsx';
import { unpair } from './unpair.ts';
import { useFace } from './use-face.ts';
import { useTouch } from './use-touch.ts';

/** The second person's phone: hazards, what they have to look at, and their own clear. */
export function Second({ session, onLeave }: { readonly session: BaySession; readonly onLeave: () => void }) {
  const state = useFace(session);
  const { view, turn, bay } = state;
  const touch = useTouch(session, turn);
  useEffect(keepAwake, []);
  const asked = isAnsweredHere(state);
  useEffect(() => {
    if (asked) vibrate('asked');
  }, [asked]);
  return (
    <Shell state={state} onStop={() => session.stop()}>
      {view && (
        <>
          <Remark view={view} />
          {bay?.clear === 'given' && <p className="chip good">{words.second.given}</p>}
          {asked ? (
            <Answers view={view} touch={touch} asked clear={bay?.clear === 'needed'} />
          ) : (
            <p className="quiet">{words.second.nothing}</p>
          )}
          <Problems problems={view.problems} />
        </>
      )}
      {!view && bay && <Problems problems={bay.troubles} />}
      {bay && <LinkLine bay={bay} />}
      <Leave onLeave={onLeave} onUnpair={() => unpair(session.bay, bay?.device, onLeave)} />
    </Shell>
  );
}
