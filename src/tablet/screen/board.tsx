import { useEffect, useState } from 'react';
import type { BayBrief } from '../../server/protocol/index.ts';
import { elapsedText, leftText } from '../../session/clock-text.ts';
import { words } from '../words/index.ts';

const isOpen = ({ state }: BayBrief) => state !== 'free' && state !== 'lost' && state !== 'over';

function Bay({ brief, passedMs }: { readonly brief: BayBrief; readonly passedMs: number }) {
  const { bay, state, outcome, vehicle, profile, phase, phaseNumber, phaseCount, title, engine } = brief;
  const { waitsFor, timer, sessionMs, holdAsked, away } = brief;
  const tone =
    state === 'stopped' || state === 'lost'
      ? 'danger'
      : state === 'held' || engine !== 'off'
        ? 'caution'
        : 'plain';
  const left = timer && (timer.held ? timer.leftMs : Math.max(0, timer.leftMs - passedMs));
  return (
    <li>
      <p>
        <strong>{bay}</strong> {vehicle} {profile}
      </p>
      <p className={`banner ${tone}`}>
        {outcome ? words.over[outcome] : words.board.states[state]}
        {isOpen(brief) && `, ${words.engine[engine]}`}
      </p>
      {isOpen(brief) && (
        <p>
          {words.phaseOf(phaseNumber, phaseCount)} <strong>{phase}</strong>: {title};{' '}
          {elapsedText(sessionMs + passedMs)}
          {waitsFor && `; ${words.board.waitsFor(waitsFor.name)}`}
          {timer && left !== null && `; ${timer.title}: ${leftText(left)} ${words.left}`}
          {holdAsked && `; ${words.supervisor.asked}`}
        </p>
      )}
      {away.length > 0 && <p className="quiet">{words.board.away(away.map(({ name }) => name))}</p>}
    </li>
  );
}

/** All bays of the shop at a glance: how each stands, the time that runs, and who waits for whom. */
export function Board({
  bays,
  takenAtMs,
}: {
  readonly bays: readonly BayBrief[];
  readonly takenAtMs: number;
}) {
  const [nowMs, setNowMs] = useState(() => performance.now());
  useEffect(() => {
    const tick = setInterval(() => setNowMs(performance.now()), 1000);
    return () => clearInterval(tick);
  }, []);
  if (bays.length === 0) return null;
  return (
    <section aria-labelledby="board">
      <h2 id="board">{words.board.title}</h2>
      <ul className="records">
        {bays.map(brief => (
          <Bay key={brief.bay} brief={brief} passedMs={Math.max(0, nowMs - takenAtMs)} />
        ))}
      </ul>
    </section>
  );
}
