import type { Features } from '../../src/voice/decoders/network/features.ts';
import { hasPhone } from '../../src/voice/ear/moment.ts';
import { momentMs } from '../../src/voice/phone-network/network.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import { highPass } from './filters.ts';
import { meanPower } from './mix.ts';
import type { Remembered } from './remembered.ts';

/** What was heard around a wording. */
export interface Surroundings {
  /** Share of the moments of the seconds before it in which a phone was heard, or somebody was taken to be near. */
  readonly phones4s: number;
  readonly near4s: number;
  readonly phones8s: number;
  readonly near8s: number;
  /** From the phone before it to its first. */
  readonly gapMs: number;
  readonly leastNear: number;
  readonly leastNearBefore: number;
  /** How much louder it is above 4 kHz than the seconds before it, dB. */
  readonly highRiseDb: number;
}

/** @param step the steps that were heard when it was decided */
export function surroundingsOf(
  samples: Float32Array,
  remembered: Remembered,
  step: number,
  { moments, momentsAfter }: Features,
): Surroundings {
  const all = remembered.slice(0, step).flat();
  const late = 145 / momentMs;
  const to = Math.max(0, Math.round(all.length - momentsAfter - late));
  const from = Math.max(0, to - moments - 2);
  const before = (seconds: number) =>
    all.slice(Math.max(0, from - Math.round((1000 * seconds) / momentMs)), from);
  const share = (list: typeof all, is: (moment: (typeof all)[number]) => boolean) =>
    list.filter(is).length / Math.max(1, list.length);
  const isNear = ({ near }: { readonly near: number }) => near >= 0.5;
  const last = all.slice(0, from).findLastIndex(hasPhone);
  const at = (moment: number) => Math.max(0, Math.round((moment * momentMs * speechRateHz) / 1000));
  const filter = highPass(4_000);
  const start = at(from - 133);
  const high = samples.subarray(start, at(to + 4)).map(filter);
  const within = high.subarray(at(from) - start);
  const earlier = high.subarray(0, at(from) - start);
  const nears = all.slice(from, to + 1).map(({ near }) => near);
  const round = (value: number) => Number(value.toFixed(3));
  return {
    phones4s: round(share(before(4), hasPhone)),
    near4s: round(share(before(4), isNear)),
    phones8s: round(share(before(8), hasPhone)),
    near8s: round(share(before(8), isNear)),
    gapMs: last < 0 ? 99_999 : (from - last) * momentMs,
    leastNear: round(Math.min(1, ...nears)),
    leastNearBefore: round(Math.min(1, ...all.slice(Math.max(0, from - 10), from).map(({ near }) => near))),
    highRiseDb: round(10 * Math.log10((meanPower(within) + 1e-12) / (meanPower(earlier) + 1e-12))),
  };
}
