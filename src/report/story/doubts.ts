import { ofKind, type Recorded } from '../../record/vocabulary/index.ts';
import type { DoubtStory } from '../model.ts';

/** Everything that was questioned as hardly possible, and who read it too where it was taken all the same. */
export function doubtsOf(entries: readonly Recorded[]): DoubtStory[] {
  const vouched = entries.filter(ofKind('vouched'));
  const doubted = entries.filter(ofKind('doubted'));
  return doubted.map(({ seq, timeMs, data }, index) => {
    const { step, quantity, reply, value, unit, min, max } = data;
    // The same step may be questioned more than once: somebody vouches for the last before it was taken.
    const until = doubted[index + 1]?.seq ?? Number.POSITIVE_INFINITY;
    const by = vouched.find(other => other.seq > seq && other.seq < until && other.data.step === step)?.data
      .by;
    return {
      timeMs,
      step,
      ...(quantity == null ? {} : { quantity }),
      ...(reply == null ? {} : { reply }),
      ...(value == null ? {} : { si: value }),
      unit: unit ?? '',
      ...(min == null ? {} : { min }),
      ...(max == null ? {} : { max }),
      ...(by === undefined ? {} : { vouchedBy: by }),
    };
  });
}
