import { switchedOff } from '../controls.ts';
import { cutOffOf } from '../cut-off.ts';
import { shownRunning } from '../limits/running.ts';
import { type Move, remark } from '../toolkit.ts';
import { refuseTurning } from './bus.ts';
import { refuseHeardTurning } from './ear.ts';

/** Said to stand while the bus, without a speed, shows what only an engine that runs has. */
export const refuseShownRunning: Move = {
  guard: look => shownRunning(look) !== null,
  actions: remark(look => {
    const shown = shownRunning(look);
    return {
      line: 'stillShowsRunning',
      values: {
        ...(shown ? { name: { quantityName: shown.quantity }, shown } : {}),
        off: switchedOff(look.context.profile),
        cut: cutOffOf(look.context),
      },
      priority: 'hazard',
    };
  }),
};

/**
 * What is answered first where somebody says that the engine stands, or confirms it: it is held against all that is shown
 * and heard of it at that moment, and not taken where that says otherwise. What is silent says nothing.
 */
export const refusedWhileRunning: readonly Move[] = [refuseTurning, refuseShownRunning, refuseHeardTurning];
