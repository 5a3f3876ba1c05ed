import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normal } from '../../../../audio-fixtures/random.ts';
import { synthesize } from '../../../../audio-fixtures/synthesize.ts';
import { idleNoise } from '../../../../bench/hearing/engine-noise.ts';
import { added, levelled, noiseAtSnr } from '../../../../bench/hearing/mix.ts';
import { noiseOf } from '../../../../bench/hearing/noises.ts';
import { concatenate } from '../../../../src/voice/concatenate.ts';
import { loadWeights } from '../../../../src/voice/phone-network/load-node.ts';
import { attentionByNetwork } from '../../../../src/voice/recognizers/soundswallower/attention.ts';
import { singleNumbers, spokenNumber } from '../../../helpers/human-recordings.ts';

const weights = await loadWeights();
const attention = () => attentionByNetwork(weights, () => [], 260);

/** What happens in a sound, but for its going on. */
function eventsOf(sound: Float32Array, noisyFrom = Number.POSITIVE_INFINITY) {
  const listening = attention();
  const events: { readonly kind: string; readonly atS: number }[] = [];
  for (let at = 0; at + 320 <= sound.length; at += 320) {
    const piece = sound.subarray(at, at + 320);
    for (const { kind } of listening.next(piece, piece, at >= noisyFrom).events) {
      if (kind === 'begin' || kind === 'end') events.push({ kind, atS: at / 16_000 });
    }
  }
  return events;
}

const speech = synthesize('flite-kal16', 'oil pressure forty two').samples;
const hiss = (seconds: number, gain: number) => {
  const gauss = normal(3);
  return Float32Array.from({ length: seconds * 16_000 }, () => gain * gauss());
};

describe('attention', () => {
  it('is paid to somebody who speaks, in a quiet room and beside a wrench', () => {
    const quiet = concatenate([hiss(1, 0.0002), speech, hiss(1, 0.0002)]);
    expect(eventsOf(quiet).map(({ kind }) => kind)).toEqual(['begin', 'end']);
    const wrench = noiseOf('wrench', 14, 77, []).map(sample => sample * 0.02);
    const spoken = new Float32Array(wrench.length);
    spoken.set(speech, 11 * 16_000);
    const late = eventsOf(added(wrench, spoken)).filter(({ atS }) => atS > 10.5);
    expect(late.map(({ kind }) => kind)).toEqual(['begin', 'end']);
  });

  it('is paid to a person that the network never met, beside an engine 5 dB under the voice', () => {
    // Debian asterisk-core-sounds-en-g722, one woman; nothing was learned from recordings of people.
    const said = singleNumbers.filter((_, i) => i % 3 === 0).map(name => spokenNumber(name));
    const missed = said.filter(({ sound }) => {
      const spoken = concatenate([
        new Float32Array(48_000),
        levelled(sound.samples),
        new Float32Array(16_000),
      ]);
      const engine = noiseAtSnr(idleNoise(spoken.length / 16_000 + 1, 4), 5);
      return !eventsOf(added(spoken, engine), 0).some(({ kind, atS }) => kind === 'begin' && atS > 3);
    });
    expect(missed.map(({ text }) => text)).toEqual([]);
  });

  it('never begins an utterance within another, nor ends what was not begun, whatever the noise does', () => {
    const parts = fc.constantFrom(
      speech,
      hiss(0.6, 0.0002),
      hiss(1.5, 0.02),
      new Float32Array(8_000),
      noiseOf('wrench', 2, 5, []).map(sample => 0.05 * sample),
    );
    fc.assert(
      fc.property(fc.array(parts, { minLength: 1, maxLength: 5 }), fc.nat(60_000), (sound, noisyFrom) => {
        let open = false;
        for (const { kind } of eventsOf(concatenate(sound), noisyFrom)) {
          expect(kind).toBe(open ? 'end' : 'begin');
          open = !open;
        }
      }),
      { numRuns: 12 },
    );
  });
});
