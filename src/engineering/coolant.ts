import { atmosphericPressure } from './atmosphere.ts';
import { type Given, okWithin, type Range, take } from './checks.ts';
import { type Glycol, massShareOf } from './glycol.ts';
import { fail, ok, type Result, type Rule } from './result.ts';
import { saturationTemperature } from './saturation.ts';

const SYSTEM_LITRES: Range = { min: 0.5, max: 500, unit: 'litre' };
const IN_SYSTEM_LITRES: Range = { ...SYSTEM_LITRES, min: 0 };
const SHARE: Range = { min: 0, max: 1, unit: '' };
const CONCENTRATE_SHARE: Range = { min: 0.3, max: 1, unit: '' };
const CAP_KPA: Range = { min: 0, max: 250, unit: 'kPa' };
const BOIL_C: Range = { min: 60, max: 190, unit: 'degC' };

const MIX: Rule = {
  id: 'coolant-volume-balance',
  source: 'Volume balance of a well-mixed system',
  validity: 'systems from 0.5 to 500 litre; the 1 % by which glycol and water shrink on mixing is left out',
};

const BOILING: Rule = {
  id: 'coolant-boiling',
  source:
    'Raoult: boils where water alone would boil under pressure / mole share of water; IAPWS-IF97; ISO 2533; ASHRAE Fundamentals (2009), chapter 31',
  validity:
    'cap pressures from 0 to 250 kPa, glycol shares within the ASHRAE tables; agrees with ASTM D3306 to 1 K',
};

const MOLAR_MASS: Readonly<Record<Glycol | 'water', number>> = {
  water: 18.015,
  ethylene: 62.068,
  propylene: 76.095,
};

export interface MixPlan {
  readonly drainLitres: number;
  readonly concentrateLitres: number;
  readonly waterLitres: number;
}

/**
 * What to drain and what to add so that the system is full with the wanted share of glycol, draining as
 * little as possible. Shares are volume shares of glycol, 0 to 1; `concentrateShare` is that of the coolant
 * in the can (from its label, 0.3 to 1). An empty system needs no `inSystemShare`.
 * Refused: more in the system than it holds (`contradictory`), a wanted share above that of the concentrate
 * (`noSolution`). Source: volume balance.
 */
export function planMix(inputs: {
  readonly systemLitres?: Given;
  readonly inSystemLitres?: Given;
  readonly inSystemShare?: Given;
  readonly wantedShare?: Given;
  readonly concentrateShare?: Given;
}): Result<MixPlan> {
  const empty = inputs.inSystemLitres === 0;
  const given = take({
    systemLitres: [inputs.systemLitres, SYSTEM_LITRES],
    inSystemLitres: [inputs.inSystemLitres, IN_SYSTEM_LITRES],
    inSystemShare: [inputs.inSystemShare ?? (empty ? 0 : undefined), SHARE],
    wantedShare: [inputs.wantedShare, SHARE],
    concentrateShare: [inputs.concentrateShare, CONCENTRATE_SHARE],
  });
  if (!given.ok) return given;
  const { systemLitres, inSystemLitres, inSystemShare, wantedShare, concentrateShare } = given.values;
  if (inSystemLitres > systemLitres) {
    const allowed = `${systemLitres} litre at most`;
    return fail('contradictory', 'inSystemLitres', { given: inSystemLitres, allowed });
  }
  if (wantedShare > concentrateShare) {
    const allowed = `${concentrateShare} at most with this concentrate`;
    return fail('noSolution', 'wantedShare', { given: wantedShare, allowed });
  }

  const roomLitres = systemLitres - inSystemLitres;
  const lackingGlycol = wantedShare * systemLitres - inSystemShare * inSystemLitres;
  if (lackingGlycol < 0) {
    // Too strong even when topped up with water: what stays holds exactly the glycol wanted.
    const drainLitres = Math.min(inSystemLitres, -lackingGlycol / inSystemShare);
    return ok({ drainLitres, concentrateLitres: 0, waterLitres: roomLitres + drainLitres }, MIX);
  }
  const concentrateLitres = lackingGlycol / concentrateShare;
  if (concentrateLitres <= roomLitres) {
    return ok({ drainLitres: 0, concentrateLitres, waterLitres: roomLitres - concentrateLitres }, MIX);
  }
  // Too weak for the room there is: each litre changed for concentrate gains the difference in share.
  const drainLitres = Math.min(
    inSystemLitres,
    (lackingGlycol - concentrateShare * roomLitres) / (concentrateShare - inSystemShare),
  );
  return ok({ drainLitres, concentrateLitres: roomLitres + drainLitres, waterLitres: 0 }, MIX);
}

/**
 * Boiling point, degC, of coolant under a pressure cap. `capPressureKpa` is the gauge pressure at which the
 * cap opens (0 for an open system); the atmosphere of this altitude (m) comes on top.
 * Source: Raoult with IAPWS-IF97 and ISO 2533.
 */
export function boilPoint(
  glycol: Glycol,
  inputs: { readonly glycolShare?: Given; readonly capPressureKpa?: Given; readonly altitudeM?: Given },
): Result<number> {
  const given = take({ capPressureKpa: [inputs.capPressureKpa, CAP_KPA] });
  if (!given.ok) return given;
  const atmosphere = atmosphericPressure(inputs.altitudeM);
  if (!atmosphere.ok) return atmosphere;
  const massShare = massShareOf(glycol, inputs.glycolShare);
  if (!massShare.ok) return massShare;
  const waterMoles = (1 - massShare.value) / MOLAR_MASS.water;
  const waterMoleShare = waterMoles / (waterMoles + massShare.value / MOLAR_MASS[glycol]);
  const boil = saturationTemperature((atmosphere.value + given.values.capPressureKpa) / waterMoleShare);
  return boil.ok ? okWithin(boil.value, BOIL_C, BOILING, 'capPressureKpa') : boil;
}
