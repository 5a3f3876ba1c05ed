import { describe, expect, test } from 'vitest';
import { bySentence } from '../../prompts/by-sentence.ts';
import { spanish } from '../../prompts/es/index.ts';
import { french } from '../../prompts/fr/index.ts';
import { JobCardError, parseJobCard } from '../../src/session/job-card.ts';

const card = {
  vehicle: 'Invented truck',
  engine: 'Invented diesel',
  technician: 'Ada Example',
  second: 'Ben Example',
  supervisor: 'Cleo Example',
};
const refusal = (change: Partial<typeof card>): string => {
  try {
    parseJobCard({ ...card, ...change }, 'here');
  } catch (error) {
    if (error instanceof JobCardError) return error.message;
    throw error;
  }
  return 'taken';
};

describe('a job card has two people at the engine', () => {
  test.each(['Ada Example', 'ada example', 'ADA  EXAMPLE', 'Ada-Example', 'Áda Example'])(
    'and is refused in one sentence where the second, "%s", is the technician',
    second => {
      expect(refusal({ second })).toBe(
        `Job card here: "${second}" is technician and second person at once; name somebody else, who stands at the red control.`,
      );
    },
  );

  test('nobody signs off their own start', () => {
    expect(refusal({ supervisor: 'ada example' })).toMatch(
      /^Job card here: "ada example" is technician and supervisor .* signs the start off\.$/,
    );
  });

  test('the second person may be the supervisor: the work is still another’s', () => {
    expect(refusal({ supervisor: card.second })).toBe('taken');
  });

  test('names in another script are told apart', () => {
    expect(refusal({ technician: 'Пример Ада', second: 'Пример Бен' })).toBe('taken');
  });

  test.each([french, spanish])('it is worded in $code', language => {
    const sentence = refusal({ second: card.technician });
    expect(bySentence(sentence, language.bySentence)).not.toContain('red control');
  });
});
