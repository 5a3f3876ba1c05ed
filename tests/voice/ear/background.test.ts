import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Background } from '../../../src/voice/ear/background.ts';
import { createVoicePower, powerDbfs } from '../../../src/voice/ear/voice-power.ts';

const hear = (...stretches: readonly (readonly [steps: number, db: number])[]) => {
  const background = new Background();
  for (const [steps, db] of stretches) for (let i = 0; i < steps; i++) background.next(10 ** (db / 10));
  return background;
};

describe('the background', () => {
  it('is not known before half a second of it', () => {
    expect(hear([24, -40]).levelDbfs()).toBeUndefined();
    expect(hear([25, -40]).levelDbfs()).toBeCloseTo(-40);
    expect(hear([30, -40]).levelDbfs(6)).toBeUndefined();
  });

  it('is what is heard most of the time, and not a reply in it, however loud', () => {
    expect(hear([150, -50], [50, -10]).levelDbfs()).toBeCloseTo(-50);
    expect(hear([40, -50], [160, -20]).levelDbfs()).toBeCloseTo(-20);
  });

  it('is of the last four seconds', () => {
    expect(hear([1_000, -20], [200, -60]).levelDbfs()).toBeCloseTo(-60);
  });

  it('is that before an utterance, of which the last steps are the beginning', () => {
    expect(hear([60, -50], [80, -10]).levelDbfs(80)).toBeCloseTo(-50);
  });
});

describe('power where the voice lies', () => {
  it('is the same whatever the pieces, and hardly any of a rumble', () => {
    const sine = (hz: number) =>
      Float32Array.from({ length: 1_600 }, (_, i) => 0.5 * Math.sin((2 * Math.PI * hz * i) / 16_000));
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_599 }), cut => {
        const whole = createVoicePower()(sine(1_000));
        const power = createVoicePower();
        const parts = [sine(1_000).subarray(0, cut), sine(1_000).subarray(cut)];
        const sum = parts.reduce((total, part) => total + power(part) * part.length, 0);
        expect(sum / 1_600).toBeCloseTo(whole, 10);
      }),
    );
    const rumble = powerDbfs(createVoicePower()(sine(40)));
    expect(powerDbfs(createVoicePower()(sine(1_000))) - rumble).toBeGreaterThan(15);
  });

  it('of no sound is that of silence', () => {
    expect(powerDbfs(createVoicePower()(new Float32Array()))).toBe(-96);
  });
});
