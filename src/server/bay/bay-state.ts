import type { BayState } from '../protocol/index.ts';
import { clearOf } from './commands/question.ts';
import type { Crew } from './crew.ts';
import type { CurrentRun } from './current-run.ts';
import type { Starter } from './starter.ts';

/** Everything that the faces of a bay are to show at this moment. */
export function bayState(
  bay: string,
  {
    current,
    crew,
    starter,
  }: { readonly current: CurrentRun; readonly crew: Crew; readonly starter: Starter },
): BayState {
  const { run, goingOn } = current;
  return {
    bay,
    session: run?.id ?? null,
    lost: current.lost,
    view: run?.viewer.view() ?? null,
    profiles: starter.profileNames(bay),
    usual: starter.usual,
    language: run?.language ?? starter.usual.language,
    mayBeLeft: run?.mayBeLeft ?? false,
    turn: current.turn,
    grammar: goingOn?.session.grammar('voice') ?? null,
    firing: run?.firing ?? null,
    devices: crew.list(),
    clear: clearOf(goingOn?.session.moment ?? null, crew.has('second')),
    holdAsked: current.holdAsked,
  };
}
