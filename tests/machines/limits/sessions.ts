import type { Quantity } from '../../../machines/vocabulary.ts';
import type { StepId } from '../../../prompts/types.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { ofKind } from '../../../src/record/vocabulary/index.ts';
import { isAskedTogether } from '../../helpers/together.ts';
import { Driver, PAUSE_MS } from '../helpers/driver.ts';
import { goodBody, goodPauseMs } from '../helpers/good.ts';

/** What is read where it differs from a good start, in SI. */
export type Shown = Partial<Record<Quantity, number>>;

const MOST_TURNS = 2000;

/** All goes well until the named state, with these values in place of the usual ones. */
export function goOn(driver: Driver, state: string, shown: Shown = {}): Driver {
  for (let turn = 0; driver.name !== state; turn += 1) {
    if (isAskedTogether(driver.moment, state)) {
      driver.reply('oneByOne');
      continue;
    }
    if (driver.over || turn > MOST_TURNS) throw new Error(`Never came to ${state}; is at ${driver.name}.`);
    const body = goodBody(driver.moment);
    const si = body?.type === 'value' ? shown[body.quantity] : undefined;
    if (body?.type === 'value' && si !== undefined)
      driver.send({ ...body, si }, { afterMs: goodPauseMs(driver.moment) ?? PAUSE_MS });
    else driver.good();
  }
  return driver;
}

const known = new Map<string, Driver>();

/** A session of its own that has come to a state, in which all went well but for the values shown. */
export function sessionAt(profile: Profile, state: string, shown: Shown = {}): Driver {
  const key = JSON.stringify([profile, state, shown]);
  const driver = known.get(key) ?? goOn(new Driver(profile), state, shown);
  known.set(key, driver);
  return driver.fork([]);
}

/** So much time goes by, ms, in which people say from time to time that they are there. */
export function whileAnswering(driver: Driver, ms: number): Driver {
  const untilMs = driver.nowMs + ms;
  while (untilMs - driver.nowMs > 250_000) driver.reply('notYet', { afterMs: 200_000 });
  return driver.clock(untilMs - driver.nowMs);
}

export const isDone = (driver: Driver, step: StepId) => driver.context.done.includes(step);

/** Whether the last verdict on the record says that the limit is met; null where none was given. */
export function lastVerdict(driver: Driver): boolean | null {
  const verdict = driver.notes.findLast(ofKind('verdict'));
  return verdict ? verdict.data.met : null;
}
