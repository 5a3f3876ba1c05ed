import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  applyPatch,
  bayPatchSchema,
  bayStateSchema,
  patchBetween,
} from '../../../src/server/protocol/index.ts';
import { bayState } from './states.ts';

describe('Patches between two states of a bay', () => {
  test('applied to the state before, they give the state after, through JSON and the schema', () => {
    fc.assert(
      fc.property(bayState, bayState, (before, after) => {
        const patch = patchBetween(before, after);
        const sent = patch && bayPatchSchema.parse(JSON.parse(JSON.stringify(patch)));
        expect(sent ? applyPatch(before, sent) : before).toEqual(after);
      }),
    );
  });

  test('there is none where nothing has changed', () => {
    fc.assert(fc.property(bayState, state => patchBetween(state, structuredClone(state)) === null));
  });

  test('every state passes its own schema unchanged', () => {
    fc.assert(
      fc.property(bayState, state => {
        expect(bayStateSchema.parse(JSON.parse(JSON.stringify(state)))).toEqual(state);
      }),
    );
  });

  test('a log that slid by one line sends that line only', () => {
    fc.assert(
      fc.property(bayState, state => {
        if (state.view === null) return;
        const log = Array.from({ length: 5 }, (_, index) => ({ time: '', who: 'says', text: `${index}` }));
        const before = { ...state, view: { ...state.view, log: log.slice(0, 4) } };
        const after = { ...state, view: { ...state.view, log: log.slice(1) } };
        expect(patchBetween(before, after)?.view).toMatchObject({
          kind: 'part',
          set: {},
          log: { keep: 3, append: [{ text: '4' }] },
        });
      }),
    );
  });
});
