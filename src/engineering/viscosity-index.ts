import { type Given, okWithin, type Range, take } from './checks.ts';
import { fail, type Result, type Rule } from './result.ts';

const VISCOSITY_40: Range = { min: 2, max: 1e6, unit: 'mm2/s' };
const VISCOSITY_100: Range = { min: 2, max: 500, unit: 'mm2/s' };
/** Far beyond any lubricant on either side: a result outside comes from readings that were mixed up. */
const INDEX: Range = { min: -200, max: 600, unit: '' };

const RULE: Rule = {
  id: 'astm-d2270',
  source: 'ASTM D2270-10(2016), procedures A and B, L and H by the equations of table X2.1',
  validity: '2 to 500 mm2/s at 100 degC, and thicker than that at 40 degC',
};

/** Viscosity at 100 degC from which a row holds; L = a Y2 + b Y + c; H = d Y2 + e Y + f. */
const TABLE_X2_1 = [
  [2, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077],
  [3.8, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183],
  [4.4, 2.5, -7.2143, 13.812, 0.82143, 1.5679, 0.119],
  [5, 0.101, 16.635, -45.469, 0.04985, 9.1613, -18.557],
  [6.4, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656],
  [7, 0.01191, 21.475, -72.87, 0.79762, -0.7321, 14.61],
  [7.7, 0.41858, 16.1558, -56.04, 0.05794, 10.5156, -28.24],
  [9, 0.88779, 7.5527, -16.6, 0.26665, 6.7015, -10.81],
  [12, 0.7672, 10.7972, -38.18, 0.20073, 8.4658, -22.49],
  [15, 0.97305, 5.3135, -2.2, 0.28889, 5.9741, -4.93],
  [18, 0.97256, 5.25, -0.98, 0.24504, 7.416, -16.73],
  [22, 0.91413, 7.4759, -21.82, 0.20323, 9.1267, -34.23],
  [28, 0.87031, 9.7157, -50.77, 0.18411, 10.1015, -46.75],
  [40, 0.84703, 12.6752, -133.31, 0.17029, 11.4866, -80.62],
  [55, 0.85921, 11.1009, -83.19, 0.1713, 11.368, -76.94],
  [70, 0.83531, 14.6731, -216.246, 0.16841, 11.8493, -96.947],
] as const;

/**
 * Viscosity index (no unit, not rounded) from the kinematic viscosities at 40 and 100 degC, both in mm2/s.
 * Valid from 2 to 500 mm2/s at 100 degC. Source: ASTM D2270.
 */
export function viscosityIndex(inputs: {
  readonly viscosity40Mm2S?: Given;
  readonly viscosity100Mm2S?: Given;
}): Result<number> {
  const given = take({
    viscosity40Mm2S: [inputs.viscosity40Mm2S, VISCOSITY_40],
    viscosity100Mm2S: [inputs.viscosity100Mm2S, VISCOSITY_100],
  });
  if (!given.ok) return given;
  const { viscosity40Mm2S: u, viscosity100Mm2S: y } = given.values;
  if (u <= y) {
    return fail('contradictory', 'viscosity40Mm2S', { given: u, allowed: 'an oil is thicker when colder' });
  }
  const [, a, b, c, d, e, f] = TABLE_X2_1.findLast(([from]) => y >= from) ?? TABLE_X2_1[0];
  const l = a * y ** 2 + b * y + c;
  const h = d * y ** 2 + e * y + f;
  const index =
    u >= h
      ? ((l - u) / (l - h)) * 100
      : (10 ** ((Math.log10(h) - Math.log10(u)) / Math.log10(y)) - 1) / 0.00715 + 100;
  return okWithin(index, INDEX, RULE, 'viscosity40Mm2S');
}
