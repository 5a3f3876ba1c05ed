import { procedureFor } from '../../../machines/first-start.ts';
import type { Moment } from '../../../machines/moment.ts';
import type { ReplyId, StepId } from '../../../prompts/types.ts';
import type { Profile } from '../../profile/schema.ts';
import type { Gauges } from '../gauges.ts';

/** Steps with the engine running at which it may rightly stand or have no pressure yet. */
const exempt: readonly string[] = [
  'firstFire.oilPressure',
  'firstRun.oilPressure',
  'firstRun.keyOff',
  'shutdown.keyOff',
] satisfies StepId[];

/** Read so often and never accepted, by whomever it is read: then people stop asking the gauge. */
const READ_IN_VAIN = 15;
/** Steps at which a gauge is read again and again while all goes well. */
const readOften: readonly string[] = ['warmUp.watch', 'warmUp.fastIdle'] satisfies StepId[];

const causeOfCode = (spn: number): ReplyId => {
  if (spn === 100) return 'causeNoOilPressure';
  if (spn === 110) return 'causeOverheating';
  return spn === 190 ? 'causeOverspeed' : 'causeFaultCode';
};

/** What makes people shout stop without being asked: the cause that they have in mind, or null. */
export function createAlarm(profile: Profile) {
  const running = new Set(
    procedureFor(profile)
      .filter(({ id, engine }) => engine === 'running' && !exempt.includes(id))
      .map(step => step.id),
  );
  return (moment: Moment, gauges: Gauges): ReplyId | null => {
    if (moment.matches('stopped') || !running.has(moment.context.step)) return null;
    if (!gauges.firing) return 'causeNoStart';
    if (gauges.lit.has('redStop')) {
      const code = gauges.codes.find(each => each.lamp === 'redStop');
      return code ? causeOfCode(code.spn) : 'causeOther';
    }
    if (gauges.lit.has('oilPressure')) return 'causeNoOilPressure';
    if (gauges.coolantC !== null && gauges.coolantC > profile.thermostat.coolantMaxC)
      return 'causeOverheating';
    const { readings, step } = moment.context;
    const inVain = readings.filter(reading => reading.step === step).length >= READ_IN_VAIN;
    return inVain && !readOften.includes(step) ? 'causeOther' : null;
  };
}
