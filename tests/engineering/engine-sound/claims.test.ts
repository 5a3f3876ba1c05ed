import { describe, expect, it } from 'vitest';
import { Claims } from '../../../src/engineering/engine-sound/claims.ts';

const belief = (rpm: number, confidence = 0.98) => ({
  rpm,
  confidence,
  slope: 0,
  running: rpm > 330 ? 1 : 0,
});

/** Speeds that are told of beliefs 0.14 s apart. */
function told(beliefs: readonly (ReturnType<typeof belief> | null)[]): (number | null)[] {
  const claims = new Claims();
  return beliefs.map((each, i) => claims.next(i * 0.14, each)?.rpm ?? null);
}
const many = (count: number, rpm: number, confidence?: number) =>
  Array.from({ length: count }, () => belief(rpm, confidence));

describe('speeds that are told', () => {
  it('are those that have lasted', () => {
    expect(told(many(5, 700))).toEqual([null, null, null, 700, 700]);
  });

  it('are none that are not sure', () => {
    expect(told(many(20, 700, 0.89))).toEqual(Array.from({ length: 20 }, () => null));
  });

  it('go on at once after a moment of doubt', () => {
    expect(told([...many(5, 700), belief(700, 0.4), ...many(2, 720)]).slice(5)).toEqual([null, 720, 720]);
  });

  it('begin anew where they jump', () => {
    expect(told([...many(5, 700), ...many(4, 1400)]).slice(5)).toEqual([null, null, null, 1400]);
  });

  it('follow a cranked engine as it fires', () => {
    expect(told([...many(6, 180), null, null, belief(640)]).at(-1)).toBe(640);
  });

  it('take longer where no engine comes from standing: a voice may hold a pitch', () => {
    expect(told(many(17, 3000)).every(each => each === null)).toBe(true);
    expect(told(many(25, 3000)).at(-1)).toBe(3000);
  });
});
