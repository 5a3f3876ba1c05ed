import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { VirtualClock } from '../../../src/session/virtual-clock.ts';
import { goUntil, rig } from '../../helpers/session-rig.ts';
import type { Face } from './face.ts';

/** A shop's folder in which the session of bay 1 broke off in this state. */
export async function interruptedShop(key: string): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'shop-'));
  const before = await rig('demo-six', 'us', join(folder, 'interrupted.jsonl'));
  await before.session.begin();
  await goUntil(before, key);
  await before.record.close();
  await mkdir(join(folder, '.server'));
  await writeFile(join(folder, '.server', 'bays.json'), JSON.stringify({ 'bay 1': 'interrupted' }));
  return folder;
}

/** What a good battery of twelve volts keeps while the starter turns. */
const CRANKING_V = '10.4';

/**
 * Answers what may be answered in words, and the one number on the way, each person on their own device, until the session
 * is in this state; a second goes by before each answer, as between people.
 */
export async function answerUntil(
  key: string,
  technician: Face,
  second: Face,
  clock: VirtualClock,
): Promise<void> {
  for (let turn = 0; turn < 40 && technician.key !== key; turn += 1) {
    clock.advance(1000);
    const { view } = technician.state ?? {};
    const who = view?.addressed === 'second' ? second : technician;
    if (/^job\.stop.*\.asking$|\.drillGoesOn$/.test(technician.key)) await who.do({ do: 'stop' });
    else if (technician.key === 'noFuelCrank.batteryLoad.asking') await who.say(CRANKING_V);
    else await who.say(view?.choices.find(choice => choice === 'correct') ?? view?.choices[0] ?? '');
    await technician.settled();
    await second.settled();
  }
  if (technician.key !== key) throw new Error(`never came to ${key}; the session is at ${technician.key}`);
}
