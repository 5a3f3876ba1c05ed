import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { faultCode, readFaultCode } from '../../src/engineering/fault-codes.ts';
import { type FaultRule, judgeFault } from '../../src/engineering/fault-rules.ts';
import { fmi } from '../../src/engineering/fmi.ts';

describe('fault code from digits', () => {
  test.each(['157 18', '157/18', 'SPN 157 FMI 18', 'spn157 fmi18', ' 157-18 ', '157, 18'])(
    '%s is SPN 157 FMI 18',
    text => {
      expect(readFaultCode(text)).toMatchObject({ ok: true, value: { spn: 157, fmi: { number: 18 } } });
    },
  );

  test.each([
    ['15718', 'missing'],
    ['', 'missing'],
    ['157', 'missing'],
    ['low oil', 'notANumber'],
    ['157 1 8', 'notANumber'],
    ['157 32', 'outOfRange'],
    ['524287 5', 'outOfRange'],
    ['0 5', 'outOfRange'],
    ['-157 5', 'notANumber'],
  ])('"%s" is never guessed at: %s', (text, code) => {
    expect(readFaultCode(text)).toMatchObject({ ok: false, issue: { code } });
  });

  test('every pair that the bus can carry reads back from its own digits', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 524_286 }), fc.integer({ min: 0, max: 31 }), (spn, number) => {
        expect(readFaultCode(`${spn}/${number}`)).toEqual(faultCode(spn, number));
      }),
    );
  });

  test.each([
    [undefined, 3, 'missing'],
    [100, Number.NaN, 'notANumber'],
    [100.5, 3, 'notANumber'],
    [100, 3.5, 'notANumber'],
  ])('numbers that are none are refused: %s, %s', (spn, number, code) => {
    expect(faultCode(spn, number)).toMatchObject({ ok: false, issue: { code } });
  });
});

describe('judging a fault', () => {
  const code = (spn: number, number: number) => ({ spn, fmi: fmi(number) ?? { number, text: '' } });
  const RULES: readonly FaultRule[] = [
    { spn: 100, action: { kind: 'blocks' } },
    { spn: 157, fmi: 18, action: { kind: 'watchUntil', seconds: 30 } },
    { spn: 157, action: { kind: 'blocks' } },
    { spn: 1761, action: { kind: 'goOn' } },
  ];

  test('a rule for the pair goes before one for the SPN', () => {
    expect(judgeFault(code(157, 18), 5, RULES)).toMatchObject({ value: { decision: 'watch', leftS: 25 } });
    expect(judgeFault(code(157, 0), 5, RULES)).toMatchObject({
      value: { decision: 'blocks', because: 'rule' },
    });
  });

  test('a watched fault that is still there when its time is up blocks', () => {
    expect(judgeFault(code(157, 18), 30, RULES)).toMatchObject({
      value: { decision: 'blocks', because: 'stillThere' },
    });
  });

  test('a fault that the profile lets pass lets the start go on', () => {
    expect(judgeFault(code(1761, 17), 0, RULES)).toMatchObject({
      value: { decision: 'mayGoOn', because: 'rule' },
    });
  });

  test('an unknown fault blocks until a supervisor accepts it with a reason', () => {
    const accepted = { spn: 3226, fmi: 4, supervisor: 'R. Ortiz', reason: 'sensor not fitted yet' };
    expect(judgeFault(code(3226, 4), 0, RULES)).toMatchObject({
      value: { decision: 'blocks', because: 'unknown' },
    });
    expect(judgeFault(code(3226, 4), 0, RULES, [accepted])).toMatchObject({
      value: { decision: 'mayGoOn', because: 'accepted' },
    });
    expect(judgeFault(code(3226, 3), 0, RULES, [accepted])).toMatchObject({ value: { decision: 'blocks' } });
    expect(judgeFault(code(3226, 4), 0, RULES, [{ ...accepted, reason: ' ' }])).toMatchObject({
      issue: { code: 'missing', input: 'reason' },
    });
    expect(judgeFault(code(3226, 4), 0, RULES, [{ ...accepted, supervisor: '' }])).toMatchObject({
      issue: { code: 'missing', input: 'supervisor' },
    });
  });

  test('neither a rule nor an acceptance says anything of another fault', () => {
    const accepted = { spn: 5, fmi: 4, supervisor: 'R. Ortiz', reason: 'sensor not fitted yet' };
    const unknown = { value: { decision: 'blocks', because: 'unknown' } };
    const rules: readonly FaultRule[] = [{ spn: 5, fmi: 3, action: { kind: 'goOn' } }];
    expect(judgeFault(code(5, 4), 0, rules)).toMatchObject(unknown);
    expect(judgeFault(code(6, 4), 0, rules, [accepted])).toMatchObject(unknown);
    expect(judgeFault(code(5, 2), 0, rules, [accepted])).toMatchObject(unknown);
  });

  test('nobody can accept what the profile says blocks', () => {
    const accepted = { spn: 100, fmi: 1, supervisor: 'R. Ortiz', reason: 'in a hurry' };
    expect(judgeFault(code(100, 1), 0, RULES, [accepted])).toMatchObject({
      value: { decision: 'blocks', because: 'rule' },
    });
  });

  test('of rules that contradict each other the strictest holds, in any order', () => {
    const rules: readonly FaultRule[] = [
      { spn: 5, action: { kind: 'goOn' } },
      { spn: 5, action: { kind: 'watchUntil', seconds: 60 } },
      { spn: 5, action: { kind: 'watchUntil', seconds: 20 } },
    ];
    fc.assert(
      fc.property(fc.shuffledSubarray([...rules], { minLength: 3 }), shuffled => {
        expect(judgeFault(code(5, 2), 10, shuffled)).toMatchObject({
          value: { decision: 'watch', leftS: 10 },
        });
        expect(
          judgeFault(code(5, 2), 10, [...shuffled, { spn: 5, action: { kind: 'blocks' } }]),
        ).toMatchObject({
          value: { decision: 'blocks' },
        });
      }),
    );
  });

  test('a time that is none is an issue, never a pass', () => {
    expect(judgeFault(code(157, 18), Number.NaN, RULES)).toMatchObject({ issue: { code: 'notANumber' } });
    expect(judgeFault(code(157, 18), undefined, RULES)).toMatchObject({ issue: { code: 'missing' } });
    expect(
      judgeFault(code(9, 1), 0, [{ spn: 9, action: { kind: 'watchUntil', seconds: Number.NaN } }]),
    ).toMatchObject({
      issue: { code: 'notANumber', input: 'watchUntilS' },
    });
  });
});
