/**
 * One lump of metal that warms or cools towards an end temperature: the closed form that the starter's
 * budget is built on. Source: lumped-capacitance method, e.g. Incropera, Fundamentals of Heat and Mass
 * Transfer, chapter 5. Plain arithmetic on values that the caller has checked.
 */
export interface Lump {
  readonly startC: number;
  /** Where the temperature would settle if things stayed as they are. */
  readonly endC: number;
  readonly timeConstantS: number;
}

/** Temperature in degC after so many seconds. */
export const temperatureAfter = ({ startC, endC, timeConstantS }: Lump, seconds: number): number => {
  const left = Math.exp(-seconds / timeConstantS);
  return endC * (1 - left) + startC * left;
};

/** Seconds until the temperature is reached: 0 when it is passed already, infinite when it never is. */
export const secondsToReach = ({ startC, endC, timeConstantS }: Lump, targetC: number): number => {
  const warms = endC > startC;
  const passed = warms ? startC >= targetC : startC <= targetC;
  if (passed) return 0;
  const never = warms ? endC <= targetC : endC >= targetC;
  return never ? Number.POSITIVE_INFINITY : timeConstantS * Math.log((endC - startC) / (endC - targetC));
};
