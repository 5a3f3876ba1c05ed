import { beforeEach, describe, expect, test } from 'vitest';
import { readLog } from '../../../../src/record/index.ts';
import { checkedHearing, clearHeard, heardInLine } from '../../../../src/server/bay/commands/answering.ts';
import { Refused } from '../../../../src/server/refused.ts';
import { goUntil, type Rig, rig } from '../../../helpers/session-rig.ts';

let bench: Rig;
beforeEach(async () => {
  bench = await rig();
  await bench.session.begin();
});

/** Whether a device may have heard this number now. */
function counts(value: number): boolean {
  const id = bench.session.grammar('voice').number?.id ?? expect.fail('No number is asked for.');
  const heard = { kind: 'number', id, value, text: String(value), confidence: 1 } as const;
  try {
    return checkedHearing(bench.session, { do: 'heard', turn: '', heard }) === heard;
  } catch (error) {
    expect(error).toBeInstanceOf(Refused);
    return false;
  }
}

describe('A number that a device heard', () => {
  test('counts off its step by no more than floating point leaves, which is more of a larger one', async () => {
    await goUntil(bench, 'job.ambient.asking');
    expect(bench.session.grammar('voice').number?.step).toBe(1);
    expect([0, 5e-7, 1e-6, -1e-6, 2e-6, 0.5].map(counts)).toEqual([true, true, true, true, false, false]);
    expect([40 + 3e-5, 40 + 5e-5, 40 - 3e-5, 40 - 5e-5].map(counts)).toEqual([true, false, true, false]);
  });

  test('counts on steps of a tenth, where it is measured so', async () => {
    await goUntil(bench, 'fill.oilQuantity.asking');
    expect(bench.session.grammar('voice').number?.step).toBeCloseTo(0.1);
    expect([15.1, 0.1 * 151, 15.15, 15.05].map(counts)).toEqual([true, true, false, false]);
  });

  test('counts where it is listened for: what only keys may give did nobody say', async () => {
    await goUntil(bench, 'job.altitude.asking');
    const [typed, said] = (['keys', 'voice'] as const).map(via => bench.session.grammar(via).number);
    const [most = Number.NaN, heard = Number.NaN] = [typed?.max, said?.max];
    expect(most).toBeGreaterThan(heard);
    expect([heard, heard + 100].map(counts)).toEqual([true, false]);
  });
});

describe('A typed line', () => {
  test('is what may be typed now; nothing where it is empty', () => {
    const heardIn = (text: string) => heardInLine(bench.session, { do: 'say', turn: '', text, via: 'keys' });
    expect(heardIn('card is right')).toMatchObject({ kind: 'reply', id: 'cardRight' });
    expect(heardIn('fire')).toMatchObject({ kind: 'stop', calls: 'smokeOrFire' });
    expect(heardIn('  ')).toBeNull();
  });
});

describe('The clear of the second person', () => {
  test('stands on the record in the words in which it is said', async () => {
    await goUntil(bench, 'noFuelCrank.untilPressure.askingClear');
    const clear = clearHeard(bench.session);
    const [first] = bench.session
      .grammar('keys')
      .replies.flatMap(({ id, wordings }) => (id === 'clearToCrank' ? wordings : []));
    expect(clear).toEqual({ kind: 'reply', id: 'clearToCrank', text: first, confidence: 1 });
    bench.session.hear(clear, 'touch', 'second');
    await bench.session.settled();
    const { entries } = await readLog(bench.path);
    expect(entries.findLast(({ kind }) => kind === 'heard')?.data).toMatchObject({
      text: first,
      by: 'second',
    });
  });
});
