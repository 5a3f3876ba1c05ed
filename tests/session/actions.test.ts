import { describe, expect, it } from 'vitest';
import { notesIn, saidIn } from '../../src/session/actions.ts';

const said = (line: string) => ({ line, step: 'job.card', values: {}, priority: 'notice' });
const note = (kind: string) => ({ kind, data: {} });

describe('what the machine asks for', () => {
  it('is said where it is a line to be said, in its order', () => {
    const actions = [
      { type: 'say', params: said('ask') },
      { type: 'note', params: note('passed') },
      { type: 'say', params: said('help') },
    ];
    expect(saidIn(actions).map(({ line }) => line)).toEqual(['ask', 'help']);
  });

  it('goes on the record where it is a note, in its order', () => {
    const actions = [
      { type: 'note', params: note('passed') },
      { type: 'say', params: said('ask') },
      { type: 'note', params: note('verdict') },
    ];
    expect(notesIn(actions).map(({ kind }) => kind)).toEqual(['passed', 'verdict']);
  });

  it('is neither where an action is of another type, whatever it carries', () => {
    expect(saidIn([{ type: 'note', params: said('ask') }])).toEqual([]);
    expect(notesIn([{ type: 'say', params: note('passed') }])).toEqual([]);
  });

  it.each([undefined, null, 'line', {}])('is no line where there is none in it: %j', params => {
    expect(saidIn([{ type: 'say', params }])).toEqual([]);
  });

  it.each([undefined, null, 'kind', {}, { kind: 'passed' }, { data: {} }])(
    'is no note where it has not both a kind and data: %j',
    params => {
      expect(notesIn([{ type: 'note', params }])).toEqual([]);
    },
  );
});
