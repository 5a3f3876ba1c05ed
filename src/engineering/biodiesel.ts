import { type Given, located, type Range, take } from './checks.ts';
import { fail, judge, ok, type Result, type Rule, type Verdict } from './result.ts';

const SHARE: Range = { min: 0, max: 1, unit: '' };
const LITRES: Range = { min: 0, max: 5000, unit: 'litre' };

const RULE: Rule = {
  id: 'biodiesel-share',
  source: 'Volume balance; limits of the trade: ASTM D975 up to B5, ASTM D7467 B6 to B20',
  validity: 'fuels measured by volume, 0 to 5000 litre each',
};

interface FuelPart {
  readonly litres?: Given;
  /** Volume share of biodiesel, 0 to 1: B20 is 0.2. */
  readonly biodieselShare?: Given;
}

/** Share of biodiesel, 0 to 1, after fuels have been mixed. Source: volume balance. */
export function biodieselShare(parts: readonly FuelPart[]): Result<number> {
  let litres = 0;
  let biodieselLitres = 0;
  for (const [place, part] of parts.entries()) {
    const given = take({ litres: [part.litres, LITRES], biodieselShare: [part.biodieselShare, SHARE] });
    if (!given.ok) return located(given, `parts[${place}]`);
    litres += given.values.litres;
    biodieselLitres += given.values.litres * given.values.biodieselShare;
  }
  if (litres === 0) return fail('missing', 'litres', { allowed: 'some fuel' });
  return ok(Math.min(1, biodieselLitres / litres), RULE);
}

/** The share after mixing, held against the engine's limit (0 to 1). Source: volume balance. */
export function judgeBiodiesel(parts: readonly FuelPart[], limit: Given): Result<Verdict> {
  const given = take({ limitShare: [limit, SHARE] });
  if (!given.ok) return given;
  const share = biodieselShare(parts);
  return share.ok ? ok(judge(share.value, '', { max: given.values.limitShare }, RULE), RULE) : share;
}
