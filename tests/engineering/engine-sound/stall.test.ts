import { describe, expect, it } from 'vitest';
import { EngineEar, type EngineHeard } from '../../../src/engineering/engine-sound/ear.ts';
import { soundRateHz } from '../../../src/engineering/engine-sound/streams.ts';
import { EngineSound } from '../../../src/rehearsal/sound/engine-sound.ts';

const firing = { cylinders: 4, strokes: 4 as const };

/** One engine that hunts, stalls, and then another that is heard at full speed at once; null where nothing sounds. */
const HUNTS_S = 8;
const STANDS_S = 1.4;
const END_S = 12.5;
const rpmAt = (s: number) =>
  s < HUNTS_S ? 700 + 25 * Math.sin((2 * Math.PI * s) / 3) : s < HUNTS_S + STANDS_S ? null : 3_000;

const heard = (() => {
  const sound = new EngineSound(firing, 4);
  const ear = new EngineEar(firing);
  const all: EngineHeard[] = [];
  for (let at = 0; at < END_S * soundRateHz; at += 160) {
    const rpm = rpmAt(at / soundRateHz);
    const samples =
      rpm === null ? new Float32Array(160) : sound.next({ rpm, firing: true, starter: false }, 160);
    ear.push(samples, one => all.push(one));
  }
  return all;
})();

describe('an engine that hunts and stalls', () => {
  it('is heard to run, and to hunt once eight seconds were heard', () => {
    const running = heard.filter(({ happened }) => happened === 'running');
    expect(running[0]?.toldS).toBeLessThan(2.5);
    const hunting = heard.find(each => each.hunting !== null);
    expect(hunting?.toldS).toBeLessThan(8.5);
    expect(hunting?.hunting?.periodS).toBeCloseTo(3, 0);
    expect(hunting?.hunting?.amplitudeRpm).toBeCloseTo(23, -1);
  });

  it('is heard to stall', () => {
    expect(
      heard.filter(({ happened }) => happened === 'stalled').map(({ toldS }) => toldS > HUNTS_S),
    ).toEqual([true]);
  });

  it('has to be started again then: straight to 3,000 rpm none comes from standing, and none is told', () => {
    const anew = heard.filter(({ toldS }) => toldS > HUNTS_S + STANDS_S);
    expect(anew.every(({ claim, happened }) => claim === null && happened === null)).toBe(true);
    expect(heard.length).toBe(Math.floor(END_S / 0.14));
  });
});
