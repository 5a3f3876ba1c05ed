import { describe, expect, it } from 'vitest';
import { wasTriedOut } from '../../machines/drills.ts';

describe('a stop on the record', () => {
  it('is a word that was tried out in the two steps where one is, and nowhere else', () => {
    for (const step of ['job.stopTechnician', 'job.stopSecond']) {
      expect(wasTriedOut(step, null)).toBe(true);
      expect(wasTriedOut(step, undefined)).toBe(true);
    }
    expect(wasTriedOut('firstFire.crank', null)).toBe(false);
  });

  it('is never one where it has a cause', () => {
    expect(wasTriedOut('job.stopTechnician', 'smokeOrFire')).toBe(false);
    expect(wasTriedOut('job.stopSecond', 'other')).toBe(false);
  });
});
