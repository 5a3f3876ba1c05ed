import { fillTimeFactor } from '../../engineering/oil-viscosity.ts';
import type { Profile } from '../../profile/schema.ts';
import type { Random } from '../random.ts';
import { viscosityCurve } from './viscosity.ts';

export interface OilPlant {
  readonly filledL: number;
  readonly galleryL: number;
  /** What the pump moves for each turn of the crank, with its efficiency. */
  readonly litrePerCrankTurn: number;
  readonly fullFlowViscosityMm2S: number;
  readonly reliefKpa: number;
  /** Pressure at 1 rpm with oil as thin as it is when hot. */
  readonly hotKpaAt1Rpm: number;
  readonly hotViscosityMm2S: number;
  readonly viscosityMm2S: (oilC: number) => number;
}

export interface OilState {
  readonly sumpL: number;
  readonly galleryL: number;
  readonly pressureKpa: number;
}

interface OilInputs {
  readonly rpm: number;
  readonly oilC: number;
  /** What the pump still does, 0 to 1. */
  readonly pumpHealth: number;
  /** Nothing holds the oil in the galleries while the engine stands. */
  readonly drainsBack: boolean;
}

/** How pressure rises with speed and viscosity where the relief valve is shut: common practice, no published source. */
const SPEED_EXPONENT = 0.7;
const VISCOSITY_EXPONENT = 0.25;
/** A good engine stands so far above its floor. */
const ABOVE_FLOOR = 1.2;
const PRESSURE_S = 0.4;
/** Galleries keep their oil for hours, and lose it in seconds where nothing holds it back. */
const HOLDS_S = 20_000;
const DRAINS_S = 10;
/** The pump wets the bearings before the last pocket is full. */
const FULL_SHARE = 0.999;

const reliefShutKpa = (
  { hotKpaAt1Rpm, hotViscosityMm2S }: Pick<OilPlant, 'hotKpaAt1Rpm' | 'hotViscosityMm2S'>,
  rpm: number,
  viscosityMm2S: number,
) => hotKpaAt1Rpm * rpm ** SPEED_EXPONENT * (viscosityMm2S / hotViscosityMm2S) ** VISCOSITY_EXPONENT;

/** Oil side of the engine that a profile describes; fill and efficiency by chance inside what it allows. */
export function oilPlant(profile: Profile, ambientC: number, random: Random): OilPlant {
  const { oil, priming, oilPressure, starter } = profile;
  const viscosityMm2S = viscosityCurve(oil.grades[0]);
  const hotViscosityMm2S = viscosityMm2S(oil.runningC);
  const unit = { hotKpaAt1Rpm: 1, hotViscosityMm2S };
  const needed = oilPressure.floor.flatMap(row =>
    row.points.map(point => point.minKpa / reliefShutKpa(unit, point.rpm, viscosityMm2S(row.oilC))),
  );
  const toShow = oilPressure.showsKpa / reliefShutKpa(unit, starter.crankingRpm, viscosityMm2S(ambientC));
  const spread = priming.fillSpreadShare;
  return {
    filledL: oil.capacityL,
    galleryL: Math.min(oil.capacityL / 2, priming.fillLitres * random.between(1 - spread, 1 + spread)),
    litrePerCrankTurn:
      priming.pumpLitrePerTurn *
      priming.pumpTurnsPerCrankTurn *
      random.between(priming.leastEfficiency, priming.greatestEfficiency),
    fullFlowViscosityMm2S: oil.fullFlowViscosityMm2S,
    reliefKpa: oilPressure.reliefKpa,
    hotKpaAt1Rpm: ABOVE_FLOOR * Math.max(toShow, ...needed),
    hotViscosityMm2S,
    viscosityMm2S,
  };
}

/** Before any oil is filled in. */
export const dryOil: OilState = { sumpL: 0, galleryL: 0, pressureKpa: 0 };

/** What has been filled in goes to the sump. */
export const fillOil = (plant: OilPlant, state: OilState): OilState => ({
  ...state,
  sumpL: plant.filledL - state.galleryL,
});

/** What the pump draws from the sump in a second, litre. */
function pumpLitrePerS(plant: OilPlant, rpm: number, oilC: number): number {
  if (rpm === 0) return 0;
  const slower = fillTimeFactor({
    viscosityMm2S: plant.viscosityMm2S(oilC),
    fullFlowViscosityMm2S: plant.fullFlowViscosityMm2S,
  });
  return (plant.litrePerCrankTurn * rpm) / 60 / (slower.ok ? slower.value : 1);
}

/**
 * One step: the pump fills the galleries out of the sump; once they are full there is pressure, by speed and
 * viscosity, and no more than the relief valve lets stand. Standing, oil runs back.
 */
export function oilStep(plant: OilPlant, state: OilState, inputs: OilInputs, dtS: number): OilState {
  const { rpm, oilC, pumpHealth, drainsBack } = inputs;
  const drawnL = Math.min(
    state.sumpL,
    plant.galleryL - state.galleryL,
    pumpLitrePerS(plant, rpm, oilC) * pumpHealth * dtS,
  );
  const back = rpm > 0 ? 0 : (state.galleryL * dtS) / (drainsBack ? DRAINS_S : HOLDS_S);
  const galleryL = state.galleryL + drawnL - back;
  const full = galleryL >= FULL_SHARE * plant.galleryL && pumpHealth > 0;
  const settledKpa = full
    ? Math.min(plant.reliefKpa, reliefShutKpa(plant, rpm, plant.viscosityMm2S(oilC)))
    : 0;
  return {
    sumpL: state.sumpL - drawnL + back,
    galleryL,
    pressureKpa: state.pressureKpa + ((settledKpa - state.pressureKpa) * dtS) / PRESSURE_S,
  };
}
