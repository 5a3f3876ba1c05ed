import { type Failure, type Given, located, type Range, take } from './checks.ts';
import { type Lump, secondsToReach, temperatureAfter } from './lumped-heat.ts';
import { fail, ok, type Result, type Rule } from './result.ts';

/** A starter motor as the engine profile describes it. */
interface Starter {
  /** Highest temperature its windings may reach, degC, 60 to 250. */
  readonly limitC?: Given;
  /** Longest burst from cold at the rated ambient temperature, s, 1 to 120: then the limit is reached. */
  readonly longestBurstS?: Given;
  /** Ambient temperature for which that burst is allowed, degC, -20 to 60. */
  readonly ratedAmbientC?: Given;
  /** Time in which it sheds 63 % of its heat, s, 10 to 3600. */
  readonly timeConstantS?: Given;
  /** So many of the longest bursts, with the rest between, bring the windings to their limit; 1 to 10, else 1. */
  readonly burstsInARow?: Given;
  /** Rest between them as the maker states it, s, 1 to 3600; asked for where there are several. */
  readonly minRestS?: Given;
}

/** Bursts and rests since the starter was last at ambient temperature, oldest first; 0 to 86400 s each. */
export type StarterHistory = readonly { readonly cranking: boolean; readonly seconds?: Given }[];

interface StarterState {
  readonly temperatureC: number;
  /** How long the starter may be used right now, s: 0 when it has to rest first. */
  readonly nextBurstS: number;
}

const LIMIT_C: Range = { min: 60, max: 250, unit: 'degC' };
const BURST_S: Range = { min: 1, max: 120, unit: 's' };
const RATED_AMBIENT_C: Range = { min: -20, max: 60, unit: 'degC' };
const AMBIENT_C: Range = { min: -60, max: 60, unit: 'degC' };
const TIME_CONSTANT_S: Range = { min: 10, max: 3600, unit: 's' };
const IN_A_ROW: Range = { min: 1, max: 10, unit: '' };
const REST_S: Range = { min: 1, max: 3600, unit: 's' };
const HISTORY_S: Range = { min: 0, max: 86_400, unit: 's' };

/** Far below what anyone could time, far above what arithmetic loses. */
const ROUNDING_S = 1e-6;

const RULE: Rule = {
  id: 'starter-thermal-budget',
  source:
    'Lumped capacitance, closed form (Incropera, Fundamentals of Heat and Mass Transfer, chapter 5), fitted to the bursts and rests that the engine profile allows',
  validity:
    'ambient temperatures from -60 to 60 degC; one time constant for warming and cooling; never longer than the profile allows from cold',
};

interface Model {
  readonly ambientC: number;
  readonly limitC: number;
  readonly longestBurstS: number;
  readonly timeConstantS: number;
  /** Where a starter that cranked for ever would settle, degC. */
  readonly crankingEndC: number;
}

type Situation = { readonly ok: true; readonly model: Model; readonly nowC: number } | Failure;

function situation(starter: Starter, ambient: Given, history: StarterHistory): Situation {
  const given = take({
    limitC: [starter.limitC, LIMIT_C],
    longestBurstS: [starter.longestBurstS, BURST_S],
    ratedAmbientC: [starter.ratedAmbientC, RATED_AMBIENT_C],
    timeConstantS: [starter.timeConstantS, TIME_CONSTANT_S],
    ambientC: [ambient, AMBIENT_C],
  });
  if (!given.ok) return given;
  const { ratedAmbientC, ...rest } = given.values;
  if (rest.limitC <= ratedAmbientC) {
    return fail('contradictory', 'limitC', { given: rest.limitC, allowed: `above ${ratedAmbientC} degC` });
  }
  const cycle = dutyCycle(starter, rest);
  if (!cycle.ok) return cycle;
  const model = { ...rest, crankingEndC: rest.ambientC + (rest.limitC - ratedAmbientC) / cycle.value };

  let nowC = model.ambientC;
  for (const [place, { cranking, seconds }] of history.entries()) {
    const spell = take({ seconds: [seconds, HISTORY_S] });
    if (!spell.ok) return located(spell, `history[${place}]`);
    nowC = temperatureAfter(lump(model, nowC, cranking), spell.values.seconds);
  }
  return { ok: true, model, nowC };
}

/**
 * The share of its end temperature that a starter reaches at the end of the bursts that may follow one another: each
 * burst adds its own, and what the earlier ones left has cooled by a whole burst and rest (a geometric series).
 */
function dutyCycle(
  { burstsInARow = 1, minRestS }: Starter,
  { longestBurstS, timeConstantS }: Pick<Model, 'longestBurstS' | 'timeConstantS'>,
): Result<number> {
  const burstShare = 1 - Math.exp(-longestBurstS / timeConstantS);
  const row = take({ burstsInARow: [burstsInARow, IN_A_ROW] });
  if (!row.ok) return row;
  if (row.values.burstsInARow === 1) return ok(burstShare, RULE);
  const rest = take({ minRestS: [minRestS, REST_S] });
  if (!rest.ok) return rest;
  const kept = Math.exp(-(longestBurstS + rest.values.minRestS) / timeConstantS);
  return ok((burstShare * (1 - kept ** row.values.burstsInARow)) / (1 - kept), RULE);
}

const lump = (model: Model, startC: number, cranking: boolean): Lump => ({
  startC,
  endC: cranking ? model.crankingEndC : model.ambientC,
  timeConstantS: model.timeConstantS,
});

/**
 * Temperature of the starter after these bursts and rests, and how long the next burst may be, s. Never more
 * than the profile allows from cold, however cold the day. `contradictory` when the limit is not above the
 * rated ambient temperature. Source: lumped capacitance.
 */
export function starterState(
  starter: Starter,
  ambientC: Given,
  history: StarterHistory,
): Result<StarterState> {
  const now = situation(starter, ambientC, history);
  if (!now.ok) return now;
  return ok({ temperatureC: now.nowC, nextBurstS: nextBurst(now.model, now.nowC) }, RULE);
}

const nextBurst = (model: Model, temperatureC: number): number =>
  temperatureC >= model.limitC
    ? 0
    : Math.min(model.longestBurstS, secondsToReach(lump(model, temperatureC, true), model.limitC));

/**
 * Seconds to rest before a burst of `wantedS` may begin; 0 when it may begin now. `noSolution` when no rest of
 * a day makes it possible: only a starter wholly cold may do its longest burst, and on a hot day not even that.
 * Source: lumped capacitance.
 */
export function starterWait(
  starter: Starter,
  ambientC: Given,
  history: StarterHistory,
  wanted: Given,
): Result<number> {
  const now = situation(starter, ambientC, history);
  if (!now.ok) return now;
  const { model, nowC } = now;
  const given = take({ wantedS: [wanted, { min: 0, max: model.longestBurstS, unit: 's' }] });
  if (!given.ok) return given;
  const { wantedS } = given.values;
  if (wantedS <= nextBurst(model, nowC) + ROUNDING_S) return ok(0, RULE);
  // Warmest start from which the burst ends exactly at the limit: the warming curve followed backwards.
  const warmestC =
    model.crankingEndC - (model.crankingEndC - model.limitC) * Math.exp(wantedS / model.timeConstantS);
  const waitS = secondsToReach(lump(model, nowC, false), warmestC);
  return waitS <= HISTORY_S.max
    ? ok(waitS, RULE)
    : fail('noSolution', 'wantedS', { given: wantedS, allowed: 'a shorter burst' });
}
