import { setTimeout as wait } from 'node:timers/promises';
import { controlIds, type Deed } from '../../src/server/protocol/index.ts';
import type { Chance } from './chance.ts';
import type { Device } from './device.ts';

/** What an engine in good order shows, in metric units; what is not here is anything that may be said. */
const good: Readonly<Record<string, number>> = {
  ambientTemperature: 5,
  coldestNight: -5,
  altitude: 300,
  coolantFreezePoint: -37,
  biodieselShare: 5,
  primerStrokes: 40,
  batteryVoltage: 12.6,
  chargingVoltage: 14.2,
  crankingVoltage: 10.4,
  engineSpeed: 850,
  oilPressure: 280,
  coolantTemperature: 30,
};

/** Who is where in a bay. */
export interface Crew {
  readonly bay: string;
  readonly technician: Device;
  readonly otherLeader: Device;
  readonly second: Device;
  readonly supervisor: Device | null;
  /** Sends too much, and leads nothing. */
  readonly flooder: Device;
}

export const facesOf = (crew: Crew): readonly Device[] =>
  [crew.technician, crew.otherLeader, crew.second, crew.supervisor, crew.flooder].filter(
    (device): device is Device => device !== null,
  );

/** The technician's device that leads now; the first one where nobody knows. */
export const leaderOf = (crew: Crew): Device =>
  [crew.technician, crew.otherLeader].find(
    device => device.state?.devices.find(({ id }) => id === device.connection.device)?.owner,
  ) ?? crew.technician;

/** Something that may be answered now, mostly well; null while there is only time to wait for. */
export function answerTo(device: Device, chance: Chance): Deed | null {
  const { state, view } = device;
  if (!state || !view || view.state === 'over') return null;
  const { turn } = state;
  if (/^job\.stop.*\.asking$|\.drillGoesOn$/.test(view.key)) return { do: 'stop' };
  const say = (text: string): Deed => ({
    do: 'say',
    turn,
    text,
    via: chance.happens(0.5) ? 'keys' : 'touch',
  });
  const { choices, number } = view;
  if (chance.happens(0.03)) return say(chance.one(['xyz', '🔧', '-40', '"}{', 'a'.repeat(399)]));
  const isRandom = chance.happens(0.1);
  if (choices.includes('correct') && !isRandom) return say('correct');
  if (number) {
    const known = good[state.grammar?.number?.id ?? ''] ?? (number.min + number.max) / 2;
    const value = isRandom ? chance.between(number.min, number.max) : known;
    return say(String(Math.round(value * 10) / 10));
  }
  if (choices.length === 0) return null;
  return say(isRandom ? chance.one(choices) : (choices[0] ?? 'correct'));
}

export interface Led {
  begun: number;
  answered: number;
  doubleTouches: number;
  doubleTaken: number;
}

/** Leads one start after another in this bay, until it is told to end. */
export async function lead(
  crew: Crew,
  chance: Chance,
  led: Led,
  goesOn: () => boolean,
  blame: (sentence: string) => void,
): Promise<void> {
  while (goesOn()) {
    await wait(chance.between(150, 900));
    const device = leaderOf(crew);
    const { view } = device;
    if (!device.isThere) continue;
    if (view === null || view.state === 'over') {
      if ((await device.do({ do: 'begin' }, 15_000))?.message.type === 'ack') led.begun += 1;
      continue;
    }
    if (chance.happens(0.05)) {
      const who = chance.one([device, crew.second]);
      await who.do({ do: 'control', turn: who.state?.turn || 'none', id: chance.one(controlIds) }, 10_000);
      continue;
    }
    const who = view.addressed === 'second' ? crew.second : device;
    const deed = who.isThere ? answerTo(who, chance) : null;
    if (deed === null) continue;
    if (deed.do === 'say' && chance.happens(0.08)) await touchTwice(who, deed, led, blame);
    else if ((await who.do(deed, 10_000))?.message.type === 'ack') led.answered += 1;
  }
}

const BETWEEN_TOUCHES_MS = 60;

/** The second touch must never answer the question that came after the first. */
async function touchTwice(
  device: Device,
  deed: Extract<Deed, { do: 'say' }>,
  led: Led,
  blame: (sentence: string) => void,
): Promise<void> {
  led.doubleTouches += 1;
  const first = device.do(deed, 10_000);
  await wait(BETWEEN_TOUCHES_MS);
  const [one, two] = await Promise.all([first, device.do(deed, 10_000)]);
  if (one?.message.type === 'ack') led.answered += 1;
  if (one?.message.type !== 'ack' || two?.message.type !== 'ack') return;
  // Where the first one changed nothing, the same question is still asked, and may be answered.
  if (one.turn === deed.turn || one.atMs > two.atMs) return;
  led.doubleTaken += 1;
  blame(
    `Two touches ${BETWEEN_TOUCHES_MS} ms apart answered two questions: ${device.view?.key}, "${deed.text}".`,
  );
}
