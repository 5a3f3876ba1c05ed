/** Speeds that are told apart: from the slowest cranking to beyond what a diesel engine is revved to. */
const slowestRpm = 90;
const fastestRpm = 3_800;
/** From one to the next, as a share. */
export const gridStep = 0.008;

const count = Math.floor(Math.log(fastestRpm / slowestRpm) / gridStep) + 1;

/** All speeds of the grid, rpm, each higher than the one before by the same share. */
export const speeds: Float64Array = Float64Array.from(
  { length: count },
  (_, i) => slowestRpm * Math.exp(i * gridStep),
);

/** How fast a speed may rise or fall while it is listened to, as a share of itself per second. */
export const slopes: readonly number[] = [-1.1, -0.4, 0, 0.4, 1.1];
export const steady: number = slopes.indexOf(0);

/** Up to here a long stretch is listened to: a slow engine repeats itself seldom. */
export const longUpToRpm = 330;
/** From standing an engine comes up by its starter and its idle, never straight to a higher speed. */
export const beginsUpToRpm = 1_100;
