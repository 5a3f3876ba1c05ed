import { expect, it } from 'vitest';
import { asOneSentence, type Worded } from '../../src/session/one-sentence.ts';

const notice = (text: string): Worded => ({ spoken: text, shown: `<${text}>`, priority: 'notice' });
const prompt = (text: string): Worded => ({ spoken: text, shown: `<${text}>`, priority: 'prompt' });

it('what is said at one moment is one sentence, in its order', () => {
  expect(asOneSentence([notice('Noted.'), prompt('Is the oil warm?'), notice('Take your time.')])).toEqual({
    spoken: 'Noted. Is the oil warm? Take your time.',
    shown: '<Noted.> <Is the oil warm?> <Take your time.>',
    priority: 'prompt',
    inPassing: '<Noted.> <Take your time.>',
  });
});

it('of two questions the last one is asked; what comes before it has to be known for it', () => {
  const { inPassing, priority } = asOneSentence([prompt('Demo six.'), prompt('Is the card right?')]);
  expect({ inPassing, priority }).toEqual({ inPassing: '<Demo six.>', priority: 'prompt' });
});

it('without a question all of it is said in passing', () => {
  expect(asOneSentence([notice('One.'), notice('Two.')])).toMatchObject({
    priority: 'notice',
    inPassing: '<One.> <Two.>',
  });
});

it('what is only shown is not spoken, and what is only spoken is not shown', () => {
  const silent: Worded = { spoken: '', shown: 'Shown.', priority: 'notice' };
  const unseen: Worded = { spoken: 'Spoken.', shown: '', priority: 'notice' };
  expect(asOneSentence([silent, unseen, prompt('Which?')])).toMatchObject({
    spoken: 'Spoken. Which?',
    shown: 'Shown. <Which?>',
  });
});
