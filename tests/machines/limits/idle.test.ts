import { describe, expect, it } from 'vitest';
import { idleExtremes, idleRun, idleSpeed } from '../../../machines/limits/engine.ts';
import { demoSix } from '../helpers/profiles.ts';
import { knowing } from './known.ts';

/* Demo-six idles at 700 to 1000 rpm cold and at 650 to 850 warm, its thermostat opens at 82 degC, 40 rpm of scatter. */
const cold = knowing(demoSix, { coolantTemperature: 10 });
const followed = (lowest: number, highest: number, context = cold) =>
  idleExtremes(
    context,
    [highest, lowest].map((si, nth) => ({ si, atMs: nth * 1000 })),
  );
const idleAt = (coolantTemperature: number) => {
  const judged = idleSpeed(knowing(demoSix, { coolantTemperature }), 800);
  return judged.ok ? [judged.value.min, judged.value.max] : null;
};

describe('the idle that is expected', () => {
  it('is the cold one below 20 degC, the warm one from 20 K below the thermostat, either one between', () => {
    expect(idleAt(19.9)).toEqual([700, 1000]);
    expect(idleAt(20)).toEqual([650, 1000]);
    expect(idleAt(61.9)).toEqual([650, 1000]);
    expect(idleAt(62)).toEqual([650, 850]);
    expect(idleAt(90)).toEqual([650, 850]);
  });

  it('is the cold one of an engine of which no temperature is known, and by the air before the gauge was read', () => {
    expect(idleSpeed(knowing(demoSix, {}), 1000)).toMatchObject({ value: { min: 700, max: 1000 } });
    expect(idleSpeed(knowing(demoSix, { ambientTemperature: 30 }), 1000)).toMatchObject({
      value: { min: 650 },
    });
  });
});

describe('the lowest and the highest of a needle that was followed', () => {
  it('are both in range, at the edge of it too', () => {
    expect(followed(900, 1000)).toMatchObject({ ok: true, value: { met: true, value: 1000, max: 1000 } });
    expect(followed(700, 800)).toMatchObject({ ok: true, value: { met: true } });
    expect(followed(699, 800)).toMatchObject({ ok: true, value: { met: false, value: 699, min: 700 } });
    expect(followed(900, 1001)).toMatchObject({ ok: true, value: { met: false, value: 1001 } });
    // Out of range is told before it is said to hunt.
    expect(followed(700, 1100)).toMatchObject({ ok: true, value: { met: false, value: 1100 } });
  });

  it('are no further apart than a sine swings whose standard deviation is the scatter: 2 sqrt(2) x 40, 113 rpm', () => {
    expect(followed(800, 913)).toMatchObject({ ok: true });
    expect(followed(800, 914)).toMatchObject({
      ok: false,
      line: 'idleHunting',
      stops: 'other',
      verdict: {
        met: false,
        value: 114,
        unit: 'rpm',
        rule: {
          id: 'idle-swing',
          source: 'a sine of standard deviation s swings 2 sqrt(2) s from peak to peak (closed form)',
          validity: 'a needle followed for half a minute',
        },
      },
    });
  });
});

describe('five speeds in a row', () => {
  const run = (...speeds: number[]) =>
    idleRun(
      cold,
      speeds.map((si, nth) => ({ si, atMs: nth * 5000 })),
    );

  it('that rise, fall or hunt are told so, with the figure that says it', () => {
    expect(run(720, 780, 840, 900, 960)).toMatchObject({
      ok: false,
      line: 'idleRising',
      verdict: { met: false },
    });
    expect(run(960, 900, 840, 780, 720)).toMatchObject({
      ok: false,
      line: 'idleFalling',
      verdict: { met: false },
    });
    expect(run(720, 960, 720, 960, 720)).toMatchObject({
      ok: false,
      line: 'idleHunting',
      stops: 'other',
      verdict: { met: false },
    });
    // What settles or warms up is read again; only what hunts stops it.
    for (const settling of [run(720, 780, 840, 900, 960), run(960, 900, 840, 780, 720)])
      expect(settling).not.toHaveProperty('stops');
  });

  it('that are steady are held against the range', () => {
    expect(run(800, 805, 800, 795, 800)).toMatchObject({ ok: true, value: { met: true } });
    expect(run(1100, 1105, 1100, 1095, 1100)).toMatchObject({ ok: true, value: { met: false, max: 1000 } });
  });
});
