import { useEffect } from 'react';
import { vibrate } from '../device/vibrate.ts';
import { keepAwake } from '../device/wake-lock.ts';
import { isAnsweredHere } from '../face/addressee.ts';
import type { BaySession } from '../remote/bay-session.ts';
import { words } from '../words/index.ts';
import { AfterStop, Coming } from './parts/ahead.tsx';
import { Answers } from './parts/answers.tsx';
import { CallsForHelp } from './parts/calls-for-help.tsx';
import { Devices } from './parts/devices.tsx';
import { EngineByEar } from './parts/engine-by-ear.tsx';
import { Leave } from './parts/leave.tsx';
import { LinkLine } from './parts/link-line.tsx';
import { LostSession } from './parts/lost-session.tsx';
import { Problems } from './parts/problems.tsx';
import { Remark } from './parts/remark.tsx';
import { Shell } from './parts/shell.tsx';
import { unpairing } from './unpair.ts';
import { useFace } from './use-face.ts';
import { useProblems } from './use-problems.ts';
import { useTouch } from './use-touch.ts';

/** The second person's phone: what they have to look at, their own clear, what comes to them, what to do after a stop. */
export function Second({ session, onLeave }: { readonly session: BaySession; readonly onLeave: () => void }) {
  const state = useFace(session);
  const { view, turn, bay } = state;
  const problems = useProblems(view);
  const touch = useTouch(session, turn, problems.layout);
  useEffect(keepAwake, []);
  const asked = isAnsweredHere(state);
  useEffect(() => {
    if (asked) vibrate('asked');
  }, [asked]);
  return (
    <Shell
      state={state}
      onStop={() => session.stop()}
      onUseHere={session.bay?.takeLine}
      aside={<CallsForHelp state={state} onCall={emergency => session.callForHelp(emergency)} />}
    >
      <LostSession face={session} state={state} />
      {view && (
        <>
          {view.state === 'stopped' && !view.drill && <AfterStop />}
          <Problems problems={problems.unread} onRead={problems.read} />
          {bay?.clear === 'given' && <p className="chip good">{words.second.given}</p>}
          {asked && <Remark view={view} />}
          {!asked && view.state !== 'stopped' && <p className="quiet">{words.second.nothing}</p>}
          <Answers view={view} touch={touch} asked={asked} clear={bay?.clear === 'needed'} />
          <Coming coming={view.coming ?? []} />
          <EngineByEar view={view} />
          <Problems problems={problems.rest} />
        </>
      )}
      {!view && bay && <Problems problems={bay.troubles} />}
      {bay && <Devices bay={bay} deeds={null} />}
      {bay && <LinkLine bay={bay} />}
      <Leave onLeave={onLeave} onUnpair={unpairing(session, onLeave)} />
    </Shell>
  );
}
