import { useEffect } from 'react';
import { vibrate } from '../device/vibrate.ts';
import { keepAwake } from '../device/wake-lock.ts';
import { isAnsweredHere } from '../face/addressee.ts';
import type { Face } from '../face/face.ts';
import { offOf } from '../face/stop-state.ts';
import { words } from '../words/index.ts';
import { Answers } from './parts/answers.tsx';
import { BayBar } from './parts/bay-bar.tsx';
import { CallsForHelp } from './parts/calls-for-help.tsx';
import { Devices } from './parts/devices.tsx';
import { EngineByEar } from './parts/engine-by-ear.tsx';
import { Leave } from './parts/leave.tsx';
import { LinkLine } from './parts/link-line.tsx';
import { LogTail } from './parts/log-tail.tsx';
import { LostSession } from './parts/lost-session.tsx';
import { PlotFigure } from './parts/plot.tsx';
import { Problems } from './parts/problems.tsx';
import { Gates, Readings, Sentences } from './parts/readings.tsx';
import { Remark } from './parts/remark.tsx';
import { Shell } from './parts/shell.tsx';
import { Write } from './parts/write.tsx';
import { unpairing } from './unpair.ts';
import { useFace } from './use-face.ts';
import { useProblems } from './use-problems.ts';
import { useTouch } from './use-touch.ts';

const LOG_LINES = 12;

/** The technician's screen: what is asked, the answers, and beside it what was read and what is still open. */
export function Technician({
  face,
  notice = '',
  onLeave,
  onGoOnAlone,
}: {
  readonly face: Face;
  /** What has happened beside the session, in passing. */
  readonly notice?: string;
  readonly onLeave: () => void;
  /** Goes on here with the copy of the bay's session, while the laptop is away. */
  readonly onGoOnAlone?: (() => void) | undefined;
}) {
  const state = useFace(face);
  const { view, turn, plots, bay } = state;
  const problems = useProblems(view);
  const touch = useTouch(face, turn, problems.layout);
  useEffect(keepAwake, []);
  const key = view?.key;
  useEffect(() => {
    if (key !== undefined) vibrate('asked');
  }, [key]);
  const beside = view && (
    <>
      {plots.map(plot => (
        <PlotFigure key={plot.quantity} plot={plot} />
      ))}
      <EngineByEar view={view} />
      <Readings readings={view.readings} />
      <Gates gates={view.gates} />
      <Sentences title={words.faults} lines={view.faults} />
      <Sentences title={words.openItems} lines={view.openItems} />
      <LogTail log={view.log} count={LOG_LINES} />
    </>
  );
  return (
    <Shell
      state={state}
      onStop={() => face.stop()}
      onUseHere={face.bay?.takeLine}
      aside={<CallsForHelp state={state} onCall={emergency => face.callForHelp(emergency)} />}
      beside={beside}
    >
      <LostSession face={face} state={state} />
      {bay && face.bay && (
        <BayBar
          bay={bay}
          deeds={face.bay}
          off={offOf(view)}
          begun={view !== null && view.outcome === null}
          onGoOnAlone={onGoOnAlone}
        />
      )}
      {view && (
        <>
          <Problems problems={problems.unread} onRead={problems.read} />
          <Remark view={view} />
          <Answers view={view} touch={touch} asked={isAnsweredHere(state)} controls />
          <Problems problems={problems.rest} />
          {isAnsweredHere(state) && (
            <Write turn={turn} touch={touch} onSay={(text, shown) => face.say(text, 'keys', shown)} />
          )}
          {view.invented && <p className="quiet">{words.invented}</p>}
        </>
      )}
      {!view && bay && <Problems problems={bay.troubles} />}
      {bay && (
        <>
          <p className="quiet" role="status">
            {notice}
          </p>
          <Devices bay={bay} deeds={face.bay} />
          <LinkLine bay={bay} />
        </>
      )}
      <Leave
        label={view?.outcome ? words.theEnd : words.leave}
        note={view?.outcome ? '' : words.leaveRunning}
        onLeave={onLeave}
        onUnpair={unpairing(face, onLeave)}
      />
    </Shell>
  );
}
