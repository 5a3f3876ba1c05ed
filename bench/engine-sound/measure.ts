import { EngineEar, type EngineHeard } from '../../src/engineering/engine-sound/ear.ts';
import type { Firing } from '../../src/engineering/engine-sound/firing.ts';
import type { SpeakerSet } from '../hearing/material.ts';
import { type Beside, noiseBeside } from './noise.ts';
import { beside, type Drive, soundOf, startScene, throughHeadset } from './scene.ts';

export interface Condition {
  readonly firing: Firing;
  readonly beside: Beside;
  readonly snrDb: number;
  readonly headset: boolean;
  readonly seed: number;
  readonly misfires?: number;
}

/** Seconds of one kind, and how the tracker did in them. */
export interface Tally {
  seconds: number;
  /** Within 2 % of the true speed. */
  right: number;
  /** Claimed, and more than 5 % off. */
  wrong: number;
  /** Nothing claimed. */
  silent: number;
}

export const tally = (): Tally => ({ seconds: 0, right: 0, wrong: 0, silent: 0 });

export interface Measured {
  /** From a second after the starter took hold. */
  readonly cranking: Tally;
  /** From a second after it fired, all speeds and changes of speed. */
  readonly running: Tally;
  /** Nothing turns: `silent` is honest. */
  readonly standing: Tally;
  /** The second in which it is cranked, fires or stops, and the next where it coasts down. */
  readonly changing: Tally;
  /** From firing to "fired", and from the stall to "stalled", s; null where it was not told. */
  readonly firedAfterS: number | null;
  readonly stalledAfterS: number | null;
  /** An idle that hunts: told with amplitude and period within 20 %; of one that does not: not told. */
  readonly huntingRight: boolean;
  /** Told although it was not so. */
  readonly falselyStalled: number;
  readonly falselyFired: number;
  /** Of a core, while nothing else ran on it. */
  readonly cpuShare: number;
  readonly soundS: number;
}

const RIGHT = 0.02;
const WRONG = 0.05;
/** What is told of a speed may be as late as this. */
const LATE_S = 1;

const isWrong = ({ claim, toldS }: EngineHeard, drive: Drive): boolean => {
  if (!claim) return false;
  for (let at = toldS - LATE_S; at <= toldS; at += 0.02)
    if (Math.abs(claim.rpm / drive.at(at).rpm - 1) <= WRONG) return false;
  return true;
};

function take(into: Tally, heard: readonly EngineHeard[], drive: Drive): void {
  into.seconds++;
  if (heard.some(each => isWrong(each, drive))) into.wrong++;
  const last = heard.findLast(({ claim }) => claim !== null);
  if (!last?.claim) into.silent++;
  else if (Math.abs(last.claim.rpm / drive.at(last.atS).rpm - 1) <= RIGHT) into.right++;
}

/** All that is heard in a sound, and the share of a core that it took. */
export function heardIn(sound: Float32Array, firing: Firing): { heard: EngineHeard[]; cpuShare: number } {
  const ear = new EngineEar(firing);
  const heard: EngineHeard[] = [];
  const before = process.cpuUsage();
  for (let at = 0; at < sound.length; at += 320)
    ear.push(sound.subarray(at, at + 320), each => heard.push(each));
  const { user, system } = process.cpuUsage(before);
  return { heard, cpuShare: (user + system) / 1e6 / (sound.length / 16_000) };
}

function soundIn({ firing, beside: kind, snrDb, headset, seed, misfires }: Condition, set: SpeakerSet) {
  const drive = startScene(seed);
  const engine = soundOf(drive, firing, seed, misfires);
  const mixed =
    kind === 'quiet'
      ? engine
      : beside(engine, noiseBeside(kind, { ...set, seed: set.seed + (seed % 4) }), snrDb);
  return { drive, sound: headset ? throughHeadset(mixed) : mixed };
}

export function measure(condition: Condition, set: SpeakerSet): Measured {
  const { drive, sound } = soundIn(condition, set);
  return judged(drive, heardIn(sound, condition.firing));
}

/** What was heard of a drive against what it was. */
function judged(drive: Drive, { heard, cpuShare }: ReturnType<typeof heardIn>): Measured {
  const { crankingFromS, firesAtS, stallsAtS } = drive;
  const after = (what: string, fromS: number) => {
    const at = heard.find(({ happened, toldS }) => happened === what && toldS >= fromS - 0.2)?.toldS;
    return at === undefined ? null : at - fromS;
  };
  const falsely = (what: string, isTrue: (toldS: number) => boolean) =>
    heard.filter(({ happened, toldS }) => happened === what && !isTrue(toldS)).length;
  const measured: Measured = {
    cranking: tally(),
    running: tally(),
    standing: tally(),
    changing: tally(),
    firedAfterS: after('fired', firesAtS),
    stalledAfterS: after('stalled', stallsAtS),
    falselyFired: falsely('fired', toldS => toldS >= firesAtS - 0.2 && toldS < stallsAtS),
    falselyStalled: falsely('stalled', toldS => toldS >= stallsAtS || toldS < crankingFromS),
    huntingRight: huntingIsRight(drive, heard),
    cpuShare,
    soundS: drive.seconds,
  };
  for (let second = 0; second + 1 < drive.seconds; second++) {
    const within = heard.filter(({ atS }) => atS > second && atS <= second + 1);
    take(kindOf(second, drive, measured), within, drive);
  }
  return measured;
}

const HUNTING_RIGHT = 0.2;

function huntingIsRight({ hunts, idleUntilS }: Drive, heard: readonly EngineHeard[]): boolean {
  const told = heard.findLast(({ toldS }) => toldS <= idleUntilS)?.hunting ?? null;
  if (!told || !hunts) return told === hunts;
  const off = (one: number, other: number) => Math.abs(one / other - 1);
  return (
    off(told.amplitudeRpm, hunts.amplitudeRpm) <= HUNTING_RIGHT &&
    off(told.periodS, hunts.periodS) <= HUNTING_RIGHT
  );
}

function kindOf(second: number, { crankingFromS, firesAtS, stallsAtS }: Drive, to: Measured): Tally {
  const inside = (from: number, until: number) => second >= from && second + 1 <= until;
  if (inside(crankingFromS + 1, firesAtS)) return to.cranking;
  if (inside(firesAtS + 1, stallsAtS)) return to.running;
  if (second + 1 <= crankingFromS || second >= stallsAtS + 2) return to.standing;
  return to.changing;
}

export function addTo(sum: Tally, more: Tally): void {
  sum.seconds += more.seconds;
  sum.right += more.right;
  sum.wrong += more.wrong;
  sum.silent += more.silent;
}
