import { describe, expect, it } from 'vitest';
import type { Recorded } from '../../src/record/vocabulary/index.ts';
import { openText } from '../../src/report/document/open-items.ts';
import { mannerOf } from '../../src/report/manner.ts';
import { openItemsOf } from '../../src/report/story/open-items.ts';

/** What a session noted, in its order. */
const noted = (notes: readonly { readonly kind: string; readonly data: object }[]) =>
  notes.map((note, seq) => ({ ...note, seq, timeMs: 1000 * seq })) as unknown as Recorded[];

const charging = {
  kind: 'leftOpen',
  data: { step: 'checks.charging', quantity: 'chargingVoltage', value: 13.2, unit: 'V', by: 'technician' },
};
const smoke = {
  kind: 'leftOpen',
  data: { step: 'firstFire.eyes', finding: 'whiteSmoke', by: 'second' },
};

const told = (notes: readonly { readonly kind: string; readonly data: object }[]) =>
  openItemsOf(noted(notes), [], [], undefined).map(item => openText(item, mannerOf('en', 'us')));

describe('what was noted and gone on with', () => {
  it('is an open item of the report, with its value or what was found', () => {
    expect(told([charging, smoke])).toEqual([
      'Left open: Charging voltage (charging 13.2 V)',
      'Left open: Eyes and ears (white smoke)',
    ]);
  });

  it('is none any more once it has come right, or a stop has put its step back on the list', () => {
    expect(told([charging, { kind: 'settled', data: { step: 'checks.charging' } }])).toEqual([]);
    const reopened = { kind: 'reopened', data: { cause: 'other', steps: ['firstFire.eyes'] } };
    expect(told([charging, smoke, reopened])).toEqual(['Left open: Charging voltage (charging 13.2 V)']);
  });
});
