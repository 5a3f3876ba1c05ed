import { languages } from '../../../prompts/index.ts';
import type { HearingView } from '../../session/view.ts';
import type { Deaf } from '../face/deaf.ts';
import { emergenciesIn } from '../face/emergencies.ts';
import type { FaceState } from '../face/face.ts';
import type { Away } from './away.ts';
import type { Connection } from './connection.ts';

/** What one device knows of its bay, besides what the laptop told it. */
export interface SeenHere {
  readonly role: FaceState['role'];
  readonly bay: string;
  readonly troubles: readonly string[];
  readonly refusal: string;
  readonly plots: FaceState['plots'];
  /** Another device leads. */
  readonly follows: boolean;
  readonly away: Away;
  readonly deaf: Deaf;
  /** Of the hearing in the session's picture: what this device hears itself, where it does. */
  readonly hearing: (hearing: HearingView) => HearingView;
}

type Told = Pick<
  Connection,
  | 'state'
  | 'lineState'
  | 'refusal'
  | 'offset'
  | 'stop'
  | 'takenAtMs'
  | 'pairing'
  | 'device'
  | 'board'
  | 'boardAtMs'
>;

/** The picture that this device's page shows: what the laptop told, and what the device knows by itself. */
export function faceStateOf(told: Told, here: SeenHere): FaceState {
  const { state, lineState, offset } = told;
  const { role, bay, troubles } = here;
  const view = state?.view ?? null;
  return {
    role,
    view: view && {
      ...view,
      problems: [...view.problems, ...troubles],
      hearing: here.hearing(view.hearing),
    },
    turn: state?.turn ?? '',
    stop: told.stop,
    deaf: here.deaf,
    takenAtMs: told.takenAtMs,
    plots: here.plots,
    emergencies: state ? emergenciesIn(languages[state.language]) : [],
    bay: {
      link: {
        state: lineState,
        bay,
        refusal: told.refusal,
        clockOffsetMs: offset?.offsetMs ?? null,
        pairing: told.pairing,
      },
      clear: state?.clear.state ?? 'notAsked',
      holdAskedBy: state?.holdAsked?.by ?? null,
      follows: here.follows,
      session: state?.session ?? null,
      lost: (state?.lost ?? null) !== null,
      devices: state?.devices ?? [],
      troubles,
      device: told.device,
      refusal: here.refusal,
      serverAheadMs: -(offset?.offsetMs ?? 0),
      engines: state?.profiles ?? [],
      usual: state?.usual ?? null,
      mayBeLeft: state?.mayBeLeft ?? false,
      board: told.board,
      boardAtMs: told.boardAtMs,
      away: here.away,
    },
  };
}
