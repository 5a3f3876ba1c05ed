import { expect, it } from 'vitest';
import { OwnHearing } from '../../src/tablet/remote/own-hearing.ts';
import type { EarLevel } from '../../src/voice/ports.ts';

const quiet: EarLevel = { levelDbfs: -60, clipping: false, speech: false };
const spoken = (nth: number): EarLevel => ({
  levelDbfs: -20,
  clipping: true,
  speech: true,
  utterance: { nth, speechDbfs: -20, aboveNoiseDb: 30 },
});
const elsewhere = {
  source: 'another device',
  levelDbfs: -1,
  clipping: false,
  speech: true,
  speaking: false,
  last: null,
};

function hearing() {
  const told: EarLevel[] = [];
  const clock = { nowMs: 0 };
  return {
    told,
    clock,
    own: new OwnHearing(
      () => clock.nowMs,
      level => told.push(level),
    ),
  };
}

it('tells its level four times a second at most, and each utterance at once', () => {
  const { own, told, clock } = hearing();
  own.hears(quiet);
  clock.nowMs = 249;
  own.hears(quiet);
  expect(told).toHaveLength(1);
  own.hears(spoken(1));
  own.hears(spoken(1));
  expect(told).toHaveLength(2);
  clock.nowMs = 249 + 250;
  own.hears(spoken(1));
  expect(told).toHaveLength(3);
});

it('shows what this device hears, not what another one does', () => {
  const { own } = hearing();
  expect(own.listensWith('microphone')).toBe(true);
  own.hears(spoken(1));
  expect(own.shownIn(elsewhere)).toEqual({
    ...elsewhere,
    source: 'microphone',
    levelDbfs: -20,
    clipping: true,
    speech: true,
  });
});

it('shows no level of a microphone that is gone', () => {
  const { own } = hearing();
  own.listensWith('microphone');
  own.hears(spoken(1));
  expect(own.listensWith('keys')).toBe(false);
  expect(own.shownIn(elsewhere)).toMatchObject({
    source: 'keys',
    levelDbfs: null,
    speech: false,
    clipping: false,
  });
});
