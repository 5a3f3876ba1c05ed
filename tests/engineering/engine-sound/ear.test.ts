import { PitchDetector } from 'pitchy';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../../audio-fixtures/random.ts';
import { throughHeadset } from '../../../bench/engine-sound/scene.ts';
import { EngineEar, type EngineHeard } from '../../../src/engineering/engine-sound/ear.ts';
import { type Firing, firingHz } from '../../../src/engineering/engine-sound/firing.ts';
import { soundRateHz } from '../../../src/engineering/engine-sound/streams.ts';
import { EngineSound } from '../../../src/rehearsal/sound/engine-sound.ts';

function soundOf(firing: Firing, seed: number, seconds: number, rpmAt: (s: number) => number, fires = true) {
  const sound = new EngineSound(firing, seed);
  const all = new Float32Array(seconds * soundRateHz);
  for (let at = 0; at < all.length; at += 160)
    all.set(sound.next({ rpm: rpmAt(at / soundRateHz), firing: fires, starter: !fires }, 160), at);
  return all;
}

function heardIn(samples: Float32Array, firing: Firing, block = 320): EngineHeard[] {
  const ear = new EngineEar(firing);
  const all: EngineHeard[] = [];
  for (let at = 0; at < samples.length; at += block)
    ear.push(samples.subarray(at, at + block), one => all.push(one));
  return all;
}

const engines = [4, 6, 8].map(cylinders => ({ cylinders, strokes: 4 as const }));

describe('an engine heard', () => {
  for (const firing of engines) {
    it(`has its speed told, ${firing.cylinders} cylinders idling, also through a headset`, () => {
      const sound = soundOf(firing, 3 + firing.cylinders, 4, s => 690 + 6 * s);
      for (const samples of [sound, throughHeadset(sound)]) {
        const heard = heardIn(samples, firing);
        const told = heard.filter(({ claim, toldS }) => claim && toldS > 1);
        expect(told.length).toBeGreaterThan(12);
        for (const { claim, atS } of told) expect(claim?.rpm).toBeCloseTo(690 + 6 * atS, -1.3);
      }
    });
  }

  it('is followed through a sweep', () => {
    const firing = { cylinders: 6, strokes: 4 as const };
    const rpmAt = (s: number) => 700 * Math.exp(0.35 * Math.max(0, s - 2));
    const told = heardIn(soundOf(firing, 5, 6, rpmAt), firing).filter(
      ({ claim, toldS }) => claim && toldS > 1.5,
    );
    expect(told.length).toBeGreaterThan(25);
    for (const { claim, atS } of told)
      expect(Math.abs((claim?.rpm ?? 0) / rpmAt(atS) - 1)).toBeLessThan(0.03);
  });

  it('is told as cranked while only the starter turns it', () => {
    const firing = { cylinders: 6, strokes: 4 as const };
    const heard = heardIn(
      soundOf(firing, 7, 5, () => 180, false),
      firing,
    );
    expect(heard.some(({ happened }) => happened === 'cranking')).toBe(true);
    expect(heard.at(-1)?.claim?.rpm).toBeGreaterThan(176);
    expect(heard.at(-1)?.claim?.rpm).toBeLessThan(184);
  });

  it('is not made of silence, of noise, nor of what is no number', () => {
    const random = uniform(8);
    const noise = Float32Array.from({ length: 6 * soundRateHz }, () => 0.1 * (random() - 0.5));
    for (const samples of [new Float32Array(5 * soundRateHz), noise, noise.map(() => Number.NaN)])
      expect(heardIn(samples, { cylinders: 4, strokes: 4 }).every(({ claim }) => claim === null)).toBe(true);
  });

  it('is heard the same in blocks of any length', () => {
    const firing = { cylinders: 4, strokes: 4 as const };
    const sound = soundOf(firing, 9, 2, () => 800);
    expect(heardIn(sound, firing, 77)).toEqual(heardIn(sound, firing, 16_000));
  });

  it('has the firing frequency that an independent reader of pitch finds, or a whole part of it', () => {
    for (const firing of engines) {
      const rpm = 1_050;
      const sound = soundOf(firing, 2, 3, () => rpm);
      const told = heardIn(sound, firing).at(-1)?.claim?.rpm ?? Number.NaN;
      const detector = PitchDetector.forFloat32Array(8_192);
      const [pitchHz] = detector.findPitch(sound.subarray(-8_192), soundRateHz);
      const ratio = firingHz(firing, told) / pitchHz;
      expect(Math.round(ratio)).toBeGreaterThanOrEqual(1);
      expect(Math.abs(ratio / Math.round(ratio) - 1)).toBeLessThan(0.02);
    }
  });
});
