import { switchedOff } from '../controls.ts';
import { cutOffOf } from '../cut-off.ts';
import { shownRunning } from '../limits/running.ts';
import { type Move, remark, update } from '../toolkit.ts';
import { refuseTurning } from './bus.ts';
import { refuseHeardTurning } from './ear.ts';

const QUESTIONED = 'standing';

/**
 * Said to stand while the bus, without a speed, shows what only an engine that runs has. It is questioned once, and said
 * again goes its way: a charger shows a voltage, and a sender that sticks a pressure, for as long as they are there.
 */
export const questionShownRunning: Move = {
  guard: look => shownRunning(look) !== null && look.context.questioned !== QUESTIONED,
  actions: [
    update(() => ({ questioned: QUESTIONED })),
    remark(look => {
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
  ],
};

/**
 * What is answered first where somebody says that the engine stands, or confirms it: it is held against all that is shown
 * and heard of it at that moment, and not taken at once where that says otherwise. What is silent says nothing.
 */
export const refusedWhileRunning: readonly Move[] = [refuseTurning, questionShownRunning, refuseHeardTurning];
