import { describe, expect, it } from 'vitest';
import { keysInTurn } from '../../src/terminal/run/keys-in-turn.ts';
import type { Grammar, Heard } from '../../src/voice/ports.ts';
import { createTypedRecognizer } from '../../src/voice/recognizers/typed.ts';

const grammar = (key: string): Grammar => ({
  key,
  language: 'en',
  stop: ['stop'],
  replies: [{ id: 'yes', wordings: ['correct'] }],
});

function atTheKeys() {
  const session = { key: 'job.figures.asking' };
  const heard: Heard[] = [];
  const keys = keysInTurn(createTypedRecognizer(), () => session.key);
  keys.onHeard(each => heard.push(each));
  keys.listen(grammar(session.key));
  return { session, heard, keys };
}

describe('a line at the keys', () => {
  it('answers what is asked', () => {
    const { heard, keys } = atTheKeys();
    expect(keys.isAsked()).toBe(true);
    keys.type('correct');
    expect(heard).toEqual([{ kind: 'reply', id: 'yes', text: 'correct', confidence: 1 }]);
  });

  it('is no answer to a question that has still to be asked', () => {
    const { session, heard, keys } = atTheKeys();
    session.key = 'job.next.asking';
    expect(keys.isAsked()).toBe(false);
    keys.type('correct');
    expect(heard).toEqual([{ kind: 'unclear', text: 'correct', reason: 'outOfGrammar' }]);
    keys.listen(grammar(session.key));
    keys.type('correct');
    expect(heard[1]).toMatchObject({ kind: 'reply', id: 'yes' });
  });

  it('stops at any time', () => {
    const { session, heard, keys } = atTheKeys();
    session.key = 'job.next.asking';
    keys.type('stop');
    expect(heard).toMatchObject([{ kind: 'stop' }]);
  });
});
