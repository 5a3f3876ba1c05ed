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

const TOLD_S = 10.5;
/** What has told this speed, at that second. */
function heard(rpm: number): Claims {
  const claims = new Claims();
  claims.next(TOLD_S - 0.5, belief(rpm));
  claims.next(TOLD_S, belief(rpm));
  return claims;
}
/** Whether a speed is told at once that comes so long after another was told, with a doubt between. */
function goesOn(rpm: number, afterS: number, then: number): boolean {
  const claims = heard(rpm);
  claims.next(TOLD_S + afterS / 2, null);
  return claims.next(TOLD_S + afterS, belief(then)) !== null;
}

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

  it('take as long as 0.42 s, from whatever second on', () => {
    for (const fromS of [0, 100]) {
      const claims = new Claims();
      expect(claims.next(fromS, belief(700))).toBeNull();
      expect(claims.next(fromS + 0.41, belief(700))).toBeNull();
      expect(claims.next(fromS + 0.42, belief(700))).toEqual({ rpm: 700, confidence: 0.98 });
    }
    const claims = new Claims();
    claims.next(0, belief(700));
    expect(claims.next(0.42 - 1e-6, belief(700))?.rpm).toBe(700);
  });

  it('take 0.42 s up to 1,100 rpm, which an engine reaches from standing, and 2.5 s above', () => {
    const lasting = (rpm: number, forS: number) => {
      const claims = new Claims();
      claims.next(50, belief(rpm));
      return claims.next(50 + forS, belief(rpm))?.rpm ?? null;
    };
    expect(lasting(1_100, 0.43)).toBe(1_100);
    expect(lasting(1_101, 2.49)).toBeNull();
    expect(lasting(1_101, 2.51)).toBe(1_101);
  });

  it('have to be surer, 0.97, of an engine that is new than of one that was heard in the last 6 s, 0.9', () => {
    expect(told(many(5, 700, 0.969)).at(-1)).toBeNull();
    expect(told(many(5, 700, 0.97)).at(-1)).toBe(700);
    expect(told([...many(5, 700), ...many(20, 700, 0.9)]).at(-1)).toBe(700);
    expect(told([...many(5, 700), ...many(20, 700, 0.899)]).at(-1)).toBeNull();
    const heardAgain = (forS: number, confidence: number) => {
      const claims = heard(700);
      claims.next(TOLD_S + 1, null);
      claims.next(TOLD_S + forS - 0.42, belief(700, confidence));
      return claims.next(TOLD_S + forS, belief(700, confidence))?.rpm ?? null;
    };
    expect(heardAgain(5.75, 0.91)).toBe(700);
    expect(heardAgain(6, 0.91)).toBeNull();
    expect(heardAgain(6, 0.98)).toBe(700);
  });

  it('are held against the time that the speed was heard last, at whatever second of the sound', () => {
    const claims = new Claims();
    claims.next(1_000, belief(700));
    claims.next(1_000.5, belief(700));
    expect(claims.next(1_000.6, belief(700, 0.91))?.rpm).toBe(700);
  });

  it('may change by a quarter from look to look, and not by a third', () => {
    expect(told([belief(700), belief(800), belief(900), belief(1_000)])).toEqual([null, null, null, 1_000]);
    expect(told([...many(3, 700), belief(700 * Math.exp(0.269))]).at(-1)).toBeCloseTo(916, 0);
    expect(told([...many(3, 700), belief(700 * Math.exp(0.271))]).at(-1)).toBeNull();
    expect(told([...many(3, 700), belief(700 * Math.exp(-0.271))]).at(-1)).toBeNull();
  });

  it('go on within 1.5 s where they could have come to, and begin anew later, or elsewhere', () => {
    expect(goesOn(700, 1.5, 700)).toBe(true);
    expect(goesOn(700, 1.51, 700)).toBe(false);
    // 15 % at once and 120 % a second, as a natural logarithm.
    expect(goesOn(700, 0.5, 700 * Math.exp(0.749))).toBe(true);
    expect(goesOn(700, 0.5, 700 * Math.exp(0.751))).toBe(false);
    expect(goesOn(700, 0.5, 700 * Math.exp(-0.749))).toBe(true);
    expect(goesOn(700, 0.5, 700 * Math.exp(-0.751))).toBe(false);
    expect(goesOn(300, 0.5, 100)).toBe(false);
  });

  it('go on at any speed within 1.5 s where an engine that was cranked has fired, from 330 rpm', () => {
    expect(goesOn(150, 0.5, 700)).toBe(true);
    expect(goesOn(150, 1.5, 700)).toBe(true);
    expect(goesOn(150, 1.51, 700)).toBe(false);
    expect(goesOn(150, 0.5, 330)).toBe(true);
    expect(goesOn(150, 0.5, 329)).toBe(false);
    expect(goesOn(329, 0.5, 800)).toBe(true);
    expect(goesOn(330, 0.5, 800)).toBe(false);
  });

  it('of an engine that has stopped are forgotten: what is heard next is new', () => {
    const claims = heard(700);
    claims.forget();
    expect(claims.next(TOLD_S + 0.1, belief(700))).toBeNull();
    expect(claims.next(TOLD_S + 0.2, belief(700, 0.96))).toBeNull();
    expect(claims.next(TOLD_S + 0.3, belief(700))).toBeNull();
    expect(claims.next(TOLD_S + 0.73, belief(700))?.rpm).toBe(700);
  });
});
