import { type Given, okWithin, type Range, take } from './checks.ts';
import { type Curve, interpolate, invertFalling } from './curve.ts';
import { ETHYLENE_GLYCOL, type GlycolTable, PROPYLENE_GLYCOL } from './glycol-table.ts';
import { fail, ok, type Result, type Rule } from './result.ts';

export type Glycol = 'ethylene' | 'propylene';

interface Properties {
  /** Volume share against freezing point, degC. */
  readonly freezing: Curve;
  /** Volume share against mass share. */
  readonly massShare: Curve;
  readonly strongestShare: number;
  readonly coldestC: number;
  readonly rule: Rule;
}

const properties = (table: GlycolTable, name: Glycol, tableNumber: number): Properties => {
  const strongestShare = Math.max(...table.map(([, volumePercent]) => volumePercent)) / 100;
  return {
    freezing: table.map(([, volumePercent, freezeC]) => [volumePercent / 100, freezeC] as const),
    massShare: table.map(([massPercent, volumePercent]) => [volumePercent / 100, massPercent / 100] as const),
    strongestShare,
    coldestC: Math.min(...table.map(([, , freezeC]) => freezeC)),
    rule: {
      id: `ashrae-${name}-glycol`,
      source: `ASHRAE Handbook, Fundamentals (2009), chapter 31, table ${tableNumber}, straight lines between its rows`,
      validity: `pure ${name} glycol in water, volume shares from 0 to ${strongestShare}; inhibitors shift it slightly, so the maker's own chart goes first`,
    },
  };
};

const GLYCOLS: Readonly<Record<Glycol, Properties>> = {
  ethylene: properties(ETHYLENE_GLYCOL, 'ethylene', 4),
  propylene: properties(PROPYLENE_GLYCOL, 'propylene', 5),
};

const NIGHT_C: Range = { min: -60, max: 50, unit: 'degC' };
const MARGIN_K: Range = { min: 0, max: 20, unit: 'K' };

const shareRange = (glycol: Glycol): Range => ({ min: 0, max: GLYCOLS[glycol].strongestShare, unit: '' });

/**
 * Freezing point, degC, of a mix with this volume share of glycol (0 to 0.578 ethylene, 0 to 0.6 propylene).
 * Source: ASHRAE Fundamentals, chapter 31.
 */
export function freezePoint(glycol: Glycol, share: Given): Result<number> {
  const { freezing, coldestC, rule } = GLYCOLS[glycol];
  const given = take({ glycolShare: [share, shareRange(glycol)] });
  if (!given.ok) return given;
  const freezeC = interpolate(freezing, given.values.glycolShare) ?? Number.NaN;
  return okWithin(freezeC, { min: coldestC, max: 0, unit: 'degC' }, rule, 'glycolShare');
}

/**
 * Least volume share of glycol that freezes at or below the coldest night less a margin in K. 0 when even
 * water would not freeze. `noSolution` when the table ends before it gets that cold.
 * Source: ASHRAE Fundamentals, chapter 31.
 */
export function shareForNight(
  glycol: Glycol,
  inputs: { readonly nightLowC?: Given; readonly marginK?: Given },
): Result<number> {
  const { freezing, coldestC, strongestShare, rule } = GLYCOLS[glycol];
  const given = take({ nightLowC: [inputs.nightLowC, NIGHT_C], marginK: [inputs.marginK, MARGIN_K] });
  if (!given.ok) return given;
  const freezeC = given.values.nightLowC - given.values.marginK;
  if (freezeC >= 0) return ok(0, rule);
  const share = interpolate(invertFalling(freezing), freezeC);
  if (share === undefined) {
    const allowed = `freezing points down to ${coldestC} degC, margin included`;
    return fail('noSolution', 'nightLowC', { given: given.values.nightLowC, allowed });
  }
  return okWithin(share, { min: 0, max: strongestShare, unit: '' }, rule, 'nightLowC');
}

/** Mass share for a volume share of glycol (0 to 0.578 ethylene, 0 to 0.6 propylene). Source: ASHRAE. */
export function massShareOf(glycol: Glycol, share: Given): Result<number> {
  const { massShare, rule } = GLYCOLS[glycol];
  const given = take({ glycolShare: [share, shareRange(glycol)] });
  if (!given.ok) return given;
  const mass = interpolate(massShare, given.values.glycolShare) ?? Number.NaN;
  return okWithin(mass, { min: 0, max: 1, unit: '' }, rule, 'glycolShare');
}
