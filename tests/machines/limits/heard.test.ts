import { describe, expect, it } from 'vitest';
import { judgeHeard, judgeSpoken } from '../../../machines/limits/agreement.ts';

describe('a spoken speed beside what the microphone heard of the engine', () => {
  it('agrees within what the needle may miss, 50 rpm, and 2 % of what was heard', () => {
    expect(judgeHeard('engineSpeed', 1650 + 83, 1650)).toMatchObject({ met: true, unit: 'rpm' });
    expect(judgeHeard('engineSpeed', 1650 + 84, 1650)).toMatchObject({ met: false });
    expect(judgeHeard('engineSpeed', 1650 - 84, 1650)).toMatchObject({ met: false });
  });

  it('agrees within 15 rpm more than the needle at low speeds, where 2 % are less', () => {
    expect(judgeHeard('engineSpeed', 265, 200)?.met).toBe(true);
    expect(judgeHeard('engineSpeed', 266, 200)?.met).toBe(false);
  });

  it('is held against nothing where nothing was heard, and nothing else is held against it', () => {
    expect(judgeHeard('engineSpeed', 800, undefined)).toBeNull();
    expect(judgeHeard('oilPressure', 800, 800)).toBeNull();
    expect(judgeHeard('oilPressure', 800, undefined)).toBeNull();
  });
});

describe('a spoken value beside what the bus showed', () => {
  it('is held against nothing where the bus showed nothing, or has no such parameter', () => {
    expect(judgeSpoken('oilPressure', 300, undefined)).toBeNull();
    expect(judgeSpoken('biodieselShare', 5, 5)).toBeNull();
    expect(judgeSpoken('oilPressure', 300, 300)).toMatchObject({ met: true });
  });
});
