import { describe, expect, it } from 'vitest';
import { english } from '../../../prompts/en/index.ts';
import { french } from '../../../prompts/fr/index.ts';
import type { Language } from '../../../prompts/types.ts';
import { type Answers, nextQuestion } from '../../../src/interview/interview.ts';
import type { QuestionId } from '../../../src/interview/question.ts';
import { questionOf, questions } from '../../../src/interview/questions/index.ts';
import { unitChoices } from '../../../src/interview/units.ts';
import { askAll } from '../../../src/terminal/engine/ask.ts';
import type { TalkIo } from '../../../src/terminal/engine/io.ts';
import { grammarFor, readBackGrammar } from '../../../src/terminal/engine/spoken-answer.ts';
import { voiceTalk } from '../../../src/terminal/engine/voice-talk.ts';
import { createMatcher } from '../../../src/voice/meaning.ts';
import { createTypedRecognizer } from '../../../src/voice/recognizers/typed.ts';

/**
 * Somebody who speaks these words, each when the tool has said its sentence; what is in brackets is typed at the keys
 * instead. What is spoken goes through the recognizer that decides by the grammar, as the ear's words do.
 */
async function interview(script: readonly string[], known: Answers = {}, language: Language = english) {
  const left = [...script];
  const said: string[] = [];
  const printed: string[] = [];
  const ear = createTypedRecognizer();
  let press: (line: string | null) => void = () => {};
  const keys: TalkIo = {
    ask: () =>
      new Promise(resolve => {
        press = resolve;
      }),
    print: line => printed.push(line),
    close: () => {},
  };
  const next = () => {
    const line = left.shift();
    if (line === undefined) press(null);
    else if (line.startsWith('[')) press(line.slice(1, -1));
    else ear.type(line);
  };
  const say = async (sentence: string) => {
    said.push(sentence);
    setImmediate(next);
  };
  const { answers } = await askAll(voiceTalk({ keys, language, ear, say }), known, {
    everything: false,
    language,
    keep: async () => {},
  });
  return { answers, said, printed };
}

const given = (answers: Answers, id: QuestionId) => answers[id]?.value;

describe('an interview by voice', () => {
  it('closes the ear and the voice with the keys', () => {
    const closed: string[] = [];
    const keys: TalkIo = { ask: async () => null, print: () => {}, close: () => closed.push('keys') };
    const ear = createTypedRecognizer();
    voiceTalk({ keys, language: english, ear, say: async () => {}, close: () => closed.push('ear') }).close();
    expect(closed).toEqual(['ear', 'keys']);
  });

  it('is held in French, where nobody has to know English', async () => {
    const { answers, said } = await interview(
      [...['trois', 'oui'], ...['non', 'oui'], ...['[Moteur du banc]', '[Moteur]'], ...['quatre', 'oui']],
      {},
      french,
    );
    expect(given(answers, 'units')).toBe('us');
    expect(given(answers, 'real')).toBe(false);
    expect(given(answers, 'engine.cylinders')).toBe(4);
    expect(said.join('\n')).toMatch(/Unités du manuel.*\n.*Exact/s);
    expect(said.join('\n')).not.toMatch(/Correct\?|Not understood|By the keys/);
  });

  it('takes numbers, choices, yes and no once they were read back, and names by the keys', async () => {
    const { answers, said, printed } = await interview([
      // Units: the third of them.
      ...['three', 'correct'],
      ...['no', 'yes'],
      ...['[My engine]', '[Engine]'],
      ...['four', 'yes'],
      // In cubic inches, as the units are US.
      ...['two hundred thirty eight', 'correct'],
      ...['two thousand three hundred', 'yes'],
    ]);
    expect(given(answers, 'units')).toBe('us');
    expect(given(answers, 'real')).toBe(false);
    expect(given(answers, 'name')).toBe('My engine');
    expect(given(answers, 'engine.cylinders')).toBe(4);
    expect(given(answers, 'engine.displacementL')).toBeCloseTo(3.9, 3);
    expect(given(answers, 'ratedRpm')).toBe(2300);
    expect(said).toContain('2300. Correct?');
    expect(said.find(sentence => sentence.startsWith('Name of the profile'))).toMatch(
      /By the keys, please\.$/,
    );
    expect(printed).toContain('    This one by the keys, please.');
  });

  it('lets nothing count that was denied, unclear or not answered to', async () => {
    const { answers, said } = await interview([
      ...['two', 'no', 'three', 'hm, perhaps', 'three', 'yes'],
      ...['banana', 'no', 'correct'],
    ]);
    expect(given(answers, 'units')).toBe('us');
    expect(given(answers, 'real')).toBe(false);
    expect(said).toContain('Not understood.');
    expect(said.filter(sentence => sentence.startsWith('US: '))).toHaveLength(2);
  });

  it('takes what is put forward by "correct", goes back, and says it again', async () => {
    const { answers, said } = await interview(['correct', 'go back', 'say again', 'correct', 'stop']);
    expect(given(answers, 'units')).toBe('metric');
    expect(answers.real).toBeUndefined();
    expect(said.filter(sentence => sentence.startsWith('Units of the manual'))).toHaveLength(3);
  });

  it('says why a number is not allowed, and asks again', async () => {
    const known = Object.fromEntries(
      Object.entries({
        units: 'metric',
        real: false,
        name: 'A',
        'engine.name': 'A',
        'engine.cylinders': 4,
      }).map(([id, value]) => [id, { value, origin: { from: 'plate' as const } }]),
    );
    const { answers, said } = await interview(['ninety', 'yes', 'four', 'yes'], known);
    expect(said).toContain('4 cylinders make from 0.6 L to 32 L.');
    expect(given(answers, 'engine.displacementL')).toBe(4);
    expect(nextQuestion(answers)?.question.id).toBe('ratedRpm');
  });
});

it.each([english, french])('lets only somebody near agree to what was read back: $code', language => {
  const grammar = readBackGrammar(questionOf('engine.displacementL'), language);
  expect(grammar.replies.find(({ id }) => id === grammar.agreement)?.wordings).toEqual(language.replies.yes);
});

it.each([english, french])(
  'whatever may be spoken to a question can be listened for, in every unit: $code',
  language => {
    const tried = new Set<string>();
    for (const { id } of questions)
      for (const units of unitChoices) {
        const grammar = grammarFor(questionOf(id), false, units, language);
        const slot = JSON.stringify({ ...grammar?.number, id: '' });
        // Most questions ask for the same numbers as another.
        if (!grammar || tried.has(slot)) continue;
        tried.add(slot);
        expect(() => createMatcher(grammar), `${id} ${slot}`).not.toThrow();
      }
    expect(grammarFor(questionOf('oil.fullFlowViscosityMm2S'), false, 'metric', language)).toBeNull();
  },
);
