import type { BayBrief, BayState } from '../protocol/index.ts';
import type { Run } from './run.ts';

const stateOf = ({ view, lost }: BayState): BayBrief['state'] => {
  if (view === null) return lost ? 'lost' : 'free';
  return view.drill === true ? 'drill' : view.state;
};

/** How it stands in a bay, of everything that its faces show. */
export function briefOf(bayState: BayState, run: Run | null, sessionMs: number): BayBrief {
  const { bay, session, view, lost, holdAsked, devices } = bayState;
  const isWaiting = view !== null && view.outcome === null && view.choices.length + (view.number ? 1 : 0) > 0;
  return {
    bay,
    session,
    state: stateOf(bayState),
    outcome: view?.outcome ?? null,
    vehicle: run?.session.parts.job.vehicle ?? '',
    profile: view?.profileName ?? '',
    phase: view?.phase ?? '',
    phaseNumber: view?.phaseNumber ?? 0,
    phaseCount: view?.phaseCount ?? 0,
    title: view?.title ?? '',
    engine: view?.engine ?? (lost ? 'unsure' : 'off'),
    waitsFor: isWaiting ? { role: view.addressed, name: view.addressedName } : null,
    timer: view?.timer ? { title: view.timer.title, leftMs: view.timer.leftMs, held: view.timer.held } : null,
    sessionMs,
    holdAsked: holdAsked !== null,
    away: devices.filter(({ connected }) => !connected).map(({ role, name }) => ({ role, name })),
  };
}
