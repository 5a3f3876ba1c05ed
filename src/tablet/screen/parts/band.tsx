import type { View } from '../../../session/view.ts';
import type { FaceState } from '../../face/face.ts';
import { offOf } from '../../face/stop-state.ts';
import { words } from '../../words/index.ts';
import { Timer } from './timer.tsx';

/** What stands over the state of the engine: the session goes on, or it does not. */
function conditionOf(view: View): { readonly tone: string; readonly text: string } | null {
  const { state, outcome } = view;
  if (outcome) return { tone: outcome === 'signedOff' ? 'good' : 'plain', text: words.over[outcome] };
  if (state === 'stopped') return { tone: 'danger', text: words.stopped(offOf(view)) };
  return state === 'held' ? { tone: 'caution', text: words.held } : null;
}

const engineTone = (engine: View['engine']) =>
  engine === 'off' ? 'plain' : engine === 'unsure' ? 'danger' : 'caution';

/** Where in the procedure this is, how the engine is, and the time that runs: at the top, whatever is scrolled. */
export function Band({ state: { view, role, bay, takenAtMs } }: { readonly state: FaceState }) {
  if (!view) {
    return (
      <header className="band">
        <p className="phase">
          <strong>{words.people[role]}</strong> {bay?.link.bay}
        </p>
      </header>
    );
  }
  const condition = conditionOf(view);
  return (
    <header className="band">
      <p className="phase">
        <span className="short">{words.phaseShort(view.phaseNumber, view.phaseCount)}</span>
        <strong>{view.phase}</strong>
      </p>
      <div role="status" className="chips">
        {condition && <p className={`chip ${condition.tone}`}>{condition.text}</p>}
        {!view.outcome && (
          <p className={`chip engine ${engineTone(view.engine)}`}>{words.engine[view.engine]}</p>
        )}
      </div>
      {view.timer && <Timer timer={view.timer} takenAtMs={takenAtMs} />}
    </header>
  );
}
