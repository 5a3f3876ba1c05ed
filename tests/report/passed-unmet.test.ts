import { describe, expect, it } from 'vitest';
import type { Recorded } from '../../src/record/vocabulary/index.ts';
import { passedUnmet } from '../../src/report/passed-unmet.ts';
import { Driver } from '../machines/helpers/driver.ts';
import { demoBoat, demoFour, demoGenset, demoSix } from '../machines/helpers/profiles.ts';

const record = (...told: readonly { readonly kind: string; readonly data: object }[]) =>
  told.map((entry, seq) => ({ ...entry, seq, timeMs: seq }) as unknown as Recorded);

const step = 'firstFire.oilPressure';
const gate = 'oilPressureShown';
const inTime = (met: boolean, more: object = { max: 8 }) => ({
  kind: 'inTime',
  data: { step, met, ...more },
});
const verdict = (met: boolean) => ({ kind: 'verdict', data: { step, met } });
const passed = (more: object = { gate }) => ({ kind: 'passed', data: { step, ...more } });

describe('a gate that a record passes', () => {
  it('against its own judgement, of a time or of a value, is found with its line', () => {
    for (const unmet of [inTime(false), verdict(false)])
      expect(passedUnmet(record(verdict(true), unmet, passed()))).toEqual({ line: 3, step, gate });
  });

  it('after another judgement that was met is passed well', () => {
    expect(passedUnmet(record(verdict(false), verdict(true), passed()))).toBeUndefined();
    expect(passedUnmet(record(inTime(true), passed(), passed()))).toBeUndefined();
  });

  it('as somebody let it stand, skipped or left open, is passed well; so is a step that opens no gate', () => {
    for (const kind of ['skipped', 'leftOpen'])
      expect(passedUnmet(record(verdict(false), { kind, data: { step } }, passed()))).toBeUndefined();
    expect(passedUnmet(record(verdict(false), passed({})))).toBeUndefined();
  });

  it('is judged by its own step only', () => {
    expect(
      passedUnmet(record({ kind: 'verdict', data: { step: 'another', met: false } }, passed())),
    ).toBeUndefined();
  });

  it('by an answer for whose time its rule had no limit was limited by the seconds of its question', () => {
    expect(passedUnmet(record(inTime(false, { why: 'no table reaches so far' }), passed()))).toBeUndefined();
  });

  it('is so in no whole start', () => {
    for (const profile of [demoSix, demoFour, demoGenset, demoBoat]) {
      const { notes } = new Driver(profile).goodToTheEnd();
      expect(notes.filter(({ kind }) => kind === 'passed').length).toBeGreaterThan(40);
      expect(passedUnmet(record(...notes))).toBeUndefined();
    }
  });
});
