const inMinutes = (seconds: number): string =>
  `${String(Math.floor(seconds / 60)).padStart(2, '0')}:${String(seconds % 60).padStart(2, '0')}`;

/** Time that has passed, in ms, as minutes and seconds: 04:09. A second counts when it is over; less than none is 00:00. */
export const elapsedText = (ms: number): string => inMinutes(Math.max(0, Math.floor(ms / 1000)));

/** Time that is left, in ms, as minutes and seconds, so that 00:00 means over; dashes when it is not known. */
export const leftText = (ms: number): string =>
  Number.isFinite(ms) ? inMinutes(Math.max(0, Math.ceil(ms / 1000))) : '--:--';
