/** A speed that swings about its mean. */
export interface Hunting {
  /** To either side of the mean. */
  readonly amplitudeRpm: number;
  readonly periodS: number;
}

export interface SpeedAt {
  readonly atS: number;
  readonly rpm: number;
}

/** Periods that a governor hunts with: common practice, no published source. */
const SHORTEST_S = 1.2;
const LONGEST_S = 9;
/** So many periods have to be seen. */
const PERIODS = 1.8;
const LEAST_SHARE = 0.012;
/** Of all that the speed varies by, one swing has to explain so much. */
const EXPLAINS = 0.6;
const LEAST_SPEEDS = 24;

/**
 * The one swing that explains most of how a speed varied about its trend (least squares over a grid of periods, closed
 * form for each); null where it is steady, varies otherwise, or was not heard long enough.
 * @param speeds in order of time, of one idle
 */
export function huntingIn(speeds: readonly SpeedAt[]): Hunting | null {
  if (speeds.length < LEAST_SPEEDS) return null;
  const times = speeds.map(({ atS }) => atS);
  const seenS = Math.max(...times) - Math.min(...times);
  const flat = withoutTrend(
    times,
    speeds.map(({ rpm }) => rpm),
  );
  const all = flat.residual.reduce((sum, each) => sum + each * each, 0);
  let best: (Hunting & { readonly power: number }) | null = null;
  const longest = Math.min(LONGEST_S, seenS / PERIODS);
  for (let periodS = SHORTEST_S; periodS <= longest; periodS *= 1.03) {
    const { amplitudeRpm, power } = swingOf(times, flat.residual, periodS);
    if (!best || power > best.power) best = { amplitudeRpm, periodS, power };
  }
  if (!best || best.power < EXPLAINS * all || best.amplitudeRpm < LEAST_SHARE * flat.mean) return null;
  return { amplitudeRpm: best.amplitudeRpm, periodS: best.periodS };
}

function withoutTrend(times: readonly number[], values: readonly number[]) {
  const n = times.length;
  const meanT = times.reduce((sum, t) => sum + t, 0) / n;
  const mean = values.reduce((sum, v) => sum + v, 0) / n;
  let [tv, tt] = [0, 0];
  times.forEach((t, i) => {
    tv += (t - meanT) * (values[i] as number);
    tt += (t - meanT) ** 2;
  });
  const slope = tv / tt;
  return { mean, residual: values.map((v, i) => v - mean - slope * ((times[i] as number) - meanT)) };
}

/** Least squares of a sine and a cosine of one period. */
function swingOf(times: readonly number[], values: readonly number[], periodS: number) {
  let [cc, cs, ss, cv, sv] = [0, 0, 0, 0, 0];
  times.forEach((t, i) => {
    const [c, s, v] = [
      Math.cos((2 * Math.PI * t) / periodS),
      Math.sin((2 * Math.PI * t) / periodS),
      values[i] as number,
    ];
    cc += c * c;
    cs += c * s;
    ss += s * s;
    cv += c * v;
    sv += s * v;
  });
  const determinant = cc * ss - cs * cs;
  if (Math.abs(determinant) < 1e-9) return { amplitudeRpm: 0, power: 0 };
  const a = (cv * ss - sv * cs) / determinant;
  const b = (sv * cc - cv * cs) / determinant;
  return { amplitudeRpm: Math.hypot(a, b), power: a * cv + b * sv };
}
