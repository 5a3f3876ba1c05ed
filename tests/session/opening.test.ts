import { describe, expect, it } from 'vitest';
import { awaySince, welcomeSaid } from '../../src/session/opening.ts';
import { demoSix } from '../machines/helpers/profiles.ts';

describe('before the first question', () => {
  const lines = (profile: typeof demoSix) =>
    welcomeSaid(profile, 'job.card').map(({ line, priority }) => [line, priority]);

  it('people are told whose engine it is, and that its values are invented where they are', () => {
    expect(lines({ ...demoSix, invented: true })).toEqual([
      ['welcome', 'prompt'],
      ['inventedProfile', 'prompt'],
    ]);
    expect(lines({ ...demoSix, invented: false })).toEqual([['welcome', 'prompt']]);
    expect(welcomeSaid(demoSix, 'job.card')[0]).toMatchObject({
      step: 'job.card',
      values: { profile: demoSix.name },
    });
  });
});

describe('how long nobody was there', () => {
  const now = new Date('2026-01-02T03:04:05Z');

  it('is what the wall clock has gone since the record was last written to, in seconds', () => {
    expect(awaySince('2026-01-02T03:03:05Z', now)).toEqual({ awayS: 60 });
    expect(awaySince('2026-01-02T03:04:05.000Z', now)).toEqual({ awayS: 0 });
  });

  it('is unknown where the clock was set back meanwhile, or nobody knows when that was', () => {
    expect(awaySince('2026-01-02T03:04:06Z', now)).toEqual({});
    expect(awaySince(undefined, now)).toEqual({});
    expect(awaySince('', now)).toEqual({});
  });
});
