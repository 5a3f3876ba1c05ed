import { expect, it } from 'vitest';
import { english } from '../../prompts/en/index.ts';
import { grammarSchema } from '../../src/server/protocol/view.ts';
import { grammarOf } from '../../src/session/grammar.ts';
import { demoSix } from '../machines/helpers/profiles.ts';
import { sessionAt } from '../machines/limits/sessions.ts';

const heardAt = (state: string) => grammarOf(sessionAt(demoSix, state).moment, english, 'metric', 'voice');

it('asks the ear for somebody near wherever a "correct" lets count what was read back', () => {
  const readBack = grammarOf(
    sessionAt(demoSix, 'warmUp.watch.between').stop().reply('allOff').moment,
    english,
    'metric',
    'voice',
  );
  expect(readBack.replies.some(({ id }) => id === 'yes')).toBe(true);
  expect(readBack.agreement).toBe('yes');
  expect(heardAt('checks.leaks.item1').agreement).toBeUndefined();
  // An ear on a device of the bay is told as well.
  expect(grammarSchema.parse(readBack).agreement).toBe('yes');
});
