import { useCallback, useState } from 'react';
import { elapsedText } from '../../session/clock-text.ts';
import { isAnsweredHere } from '../face/addressee.ts';
import type { BaySession } from '../remote/bay-session.ts';
import { inOwnWords, words } from '../words/index.ts';
import { Board } from './board.tsx';
import { Answers } from './parts/answers.tsx';
import { Devices } from './parts/devices.tsx';
import { EngineByEar } from './parts/engine-by-ear.tsx';
import { Leave } from './parts/leave.tsx';
import { LinkLine } from './parts/link-line.tsx';
import { LogTail } from './parts/log-tail.tsx';
import { OwnEngines } from './parts/own-engines.tsx';
import { PastSessions } from './parts/past-sessions.tsx';
import { PlotFigure } from './parts/plot.tsx';
import { Problems } from './parts/problems.tsx';
import { Gates, Readings, Sentences } from './parts/readings.tsx';
import { Shell } from './parts/shell.tsx';
import { unpairing } from './unpair.ts';
import { useFace } from './use-face.ts';
import { useTouch } from './use-touch.ts';

const LOG_LINES = 30;

/**
 * The supervisor's screen: everything to see, and to answer only what is asked of the supervisor, so that a signature
 * comes from their own device. A hold may be asked for, and stop works.
 */
export function Supervisor({
  session,
  onLeave,
}: {
  readonly session: BaySession;
  readonly onLeave: () => void;
}) {
  const state = useFace(session);
  const { view, turn, plots, bay } = state;
  const touch = useTouch(session, turn);
  const load = useCallback(async (find: string) => (await session.bay?.sessions(find)) ?? [], [session]);
  const [sentence, setSentence] = useState<string | null>(null);
  const openReport = async (id: string) => {
    // With the touch itself: a tab that is opened later, when the laptop has answered, is blocked.
    const tab = open('', '_blank');
    if (!tab) return setSentence(words.supervisor.noTab);
    tab.opener = null;
    setSentence(null);
    const address = await session.bay?.report(id).catch(() => null);
    if (address) tab.location.replace(address);
    else tab.close();
    setSentence(address ? words.supervisor.reportOpened : words.supervisor.noReport);
  };
  const beside = view && (
    <>
      {plots.map(plot => (
        <PlotFigure key={plot.quantity} plot={plot} />
      ))}
      <EngineByEar view={view} />
      <Gates gates={view.gates} />
      <Readings readings={view.readings} />
      <Sentences title={words.faults} lines={view.faults} />
      <Sentences title={words.openItems} lines={view.openItems} />
      <section aria-labelledby="time-line">
        <h2 id="time-line">{words.supervisor.timeLine}</h2>
        <ol className="log">
          {session.milestones().map(({ atMs, text }) => (
            <li key={`${atMs} ${text}`}>
              <time>{elapsedText(atMs)}</time> {text}
            </li>
          ))}
        </ol>
      </section>
      <LogTail log={view.log} count={LOG_LINES} />
    </>
  );
  return (
    <Shell state={state} onStop={() => session.stop()} onUseHere={session.bay?.takeLine} beside={beside}>
      <div role="alert">{sentence && <p className="wrong">{inOwnWords(sentence)}</p>}</div>
      {view && bay && (
        <>
          <Answers view={view} touch={touch} asked={isAnsweredHere(state)} />
          <section className="controls">
            <button type="button" disabled={bay.holdAskedBy !== null} onClick={() => session.bay?.askHold()}>
              {bay.holdAskedBy === null ? words.supervisor.askHold : words.supervisor.asked}
            </button>
            {bay.session !== null && (
              <button type="button" onClick={() => void openReport(bay.session ?? '')}>
                {words.supervisor.report}
              </button>
            )}
          </section>
          <Problems problems={view.problems} />
        </>
      )}
      {!view && bay && <Problems problems={bay.troubles} />}
      {bay && <Board bays={bay.board} takenAtMs={bay.boardAtMs} />}
      {session.bay && <OwnEngines deeds={session.bay} />}
      <PastSessions load={load} onReport={id => void openReport(id)} />
      {bay && <Devices bay={bay} deeds={session.bay} />}
      {bay && <LinkLine bay={bay} />}
      <Leave onLeave={onLeave} onUnpair={unpairing(session, onLeave)} />
    </Shell>
  );
}
