import { type Line, linesOfGoodStart } from '../../../audio-fixtures/good-start.ts';
import type { VirtualClock } from '../../../src/session/virtual-clock.ts';
import type { Face } from './face.ts';

/** What is said in a start where all goes well, as keys say it. */
export const linesOf = (profile: string): Promise<Line[]> => linesOfGoodStart(profile, undefined, 'keys');

const LONGEST_STEP_MS = 60_000;

/** Leads a session on a server to its end by what is said in a good start; its clock moves as the session needs. */
export async function leadToTheEnd(face: Face, clock: VirtualClock, lines: readonly Line[]): Promise<void> {
  await leadUntil('', face, clock, lines);
  await passUntil(face, clock, () => face.state?.view?.outcome !== null);
}

/** The same, until the session is in this state. */
export async function leadUntil(
  key: string,
  face: Face,
  clock: VirtualClock,
  lines: readonly Line[],
): Promise<void> {
  for (const { when, says } of lines) {
    if (when === key) return passUntil(face, clock, () => face.key === key);
    await passUntil(face, clock, () => face.key === when);
    const answer = /^stop/.test(says) ? await face.do({ do: 'stop' }) : await face.say(says);
    if (answer.type === 'error') throw new Error(`${when}: "${says}": ${answer.sentence}`);
    await face.settled();
    if (!when.startsWith('firstFire.oilPressure')) await pass(face, clock, 1500);
  }
}

export async function passUntil(face: Face, clock: VirtualClock, isSo: () => boolean): Promise<void> {
  for (let step = 0; step < 5000 && !isSo(); step += 1) {
    const nextMs = clock.nextMs();
    if (nextMs === null) await face.settled();
    else await pass(face, clock, Math.min(LONGEST_STEP_MS, Math.max(1, nextMs - clock.nowMs())));
  }
  if (!isSo()) throw new Error(`the session stays at ${face.key}`);
}

async function pass(face: Face, clock: VirtualClock, ms: number): Promise<void> {
  clock.advance(ms);
  await face.settled();
}
