import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPowerSpectrum } from '../../../src/voice/phone-network/fourier.ts';

/** The discrete Fourier transform by its definition (Oppenheim and Schafer, eq. 8.11, from memory). */
function powerByDefinition(signal: Float32Array): readonly number[] {
  return Array.from({ length: signal.length / 2 + 1 }, (_, k) => {
    let [re, im] = [0, 0];
    signal.forEach((sample, n) => {
      re += sample * Math.cos((2 * Math.PI * k * n) / signal.length);
      im -= sample * Math.sin((2 * Math.PI * k * n) / signal.length);
    });
    return re * re + im * im;
  });
}

const signals = fc
  .integer({ min: 2, max: 6 })
  .chain(bits =>
    fc.float32Array({ minLength: 2 ** bits, maxLength: 2 ** bits, min: -1, max: 1, noNaN: true }),
  );

describe('the power spectrum', () => {
  it('is that of the discrete Fourier transform', () => {
    fc.assert(
      fc.property(signals, signal => {
        const power = createPowerSpectrum(signal.length)(signal);
        powerByDefinition(signal).forEach((expected, k) => {
          expect(power[k]).toBeCloseTo(expected, 6);
        });
      }),
    );
  });

  it('holds all of the power of the signal (Parseval)', () => {
    fc.assert(
      fc.property(signals, signal => {
        const power = createPowerSpectrum(signal.length)(signal);
        const both = power.reduce((sum, p, k) => sum + (k === 0 || k === signal.length / 2 ? p : 2 * p), 0);
        const inTime = signal.reduce((sum, sample) => sum + sample * sample, 0);
        expect(both / signal.length).toBeCloseTo(inTime, 5);
      }),
    );
  });

  it('needs a length that is a power of two', () => {
    expect(() => createPowerSpectrum(400)).toThrow('A length of 400 is no power of two from 4 on.');
  });
});
