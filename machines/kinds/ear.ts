import { switchedOff } from '../controls.ts';
import { cutOffOf } from '../cut-off.ts';
import { judgeHeard } from '../limits/agreement.ts';
import { type Look, type Move, remark, speak, update } from '../toolkit.ts';
import { keyOfValue, noteDifference, TURNING_RPM } from './bus.ts';

const speedOf = ({ event }: Look): number | undefined => ('ear' in event ? event.ear?.speedRpm : undefined);

const busShowsStanding = ({ event }: Look): boolean =>
  event.type === 'reply' && event.bus?.speedRpm !== undefined && event.bus.speedRpm < TURNING_RPM;

/**
 * Said to stand while the microphone hears that it turns: believed enough to refuse, where no bus shows it standing.
 * That nothing is heard means nothing.
 */
export const refuseHeardTurning: Move = {
  guard: look => (speedOf(look) ?? 0) >= TURNING_RPM && !busShowsStanding(look),
  actions: remark(look => ({
    line: 'heardTurning',
    values: {
      speed: { unit: 'rpm', si: Math.round(speedOf(look) ?? 0) },
      off: switchedOff(look.context.profile),
      cut: cutOffOf(look.context),
    },
    priority: 'hazard',
  })),
};

const disagreement = (look: Look) =>
  look.event.type === 'value' && look.event.via !== 'bus'
    ? judgeHeard(look.event.quantity, look.event.si, look.event.ear?.speedRpm)
    : null;

/** A speed that the microphone contradicts is questioned once; said again just so, it goes its way. */
export const questionHeard: Move = {
  guard: look => disagreement(look)?.met === false && look.context.questioned !== keyOfValue(look),
  actions: [
    noteDifference(disagreement, event => ({ heard: event.ear?.speedRpm })),
    update(look => ({ questioned: keyOfValue(look) })),
    ...speak(look => ({
      line: 'heardDiffers',
      values:
        look.event.type === 'value'
          ? {
              name: { quantityName: look.event.quantity },
              spoken: { quantity: look.event.quantity, si: look.event.si },
              heard: { quantity: 'engineSpeed', si: Math.round(speedOf(look) ?? look.event.si) },
            }
          : {},
    })),
  ],
};
