import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { bySentence, patternOf } from '../../prompts/by-sentence.ts';
import { languageCodes, languages, usualLanguage } from '../../prompts/index.ts';
import { profileData } from '../../src/interview/build.ts';
import { type Answers, answerTyped, nextQuestion, withAnswer } from '../../src/interview/interview.ts';
import { idOf } from '../../src/interview/names.ts';
import { questionOf, questions } from '../../src/interview/questions/index.ts';
import { showValue } from '../../src/interview/typed.ts';
import { originText, questionWords } from '../../src/interview/words.ts';
import { acceptableNames } from '../../src/profile/accepting.ts';
import { fields, sections } from '../../src/profile/fields.ts';
import { ProfileError, parseProfile } from '../../src/profile/parse.ts';
import { origins } from '../../src/profile/provenance.ts';
import { seeded } from '../../src/rehearsal/random.ts';
import { JobCardError, parseJobCard } from '../../src/session/job-card.ts';
import { broken } from './broken.ts';
import { randomInterview } from './random-interview.ts';

const others = languageCodes.filter(code => code !== usualLanguage);

/** The sentences that an expression may be, `{}` for what is put into them. */
function sentencesOf(node: ts.Node): string[] {
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isConditionalExpression(node))
    return [...sentencesOf(node.whenTrue), ...sentencesOf(node.whenFalse)];
  if (ts.isTemplateExpression(node))
    return [node.head.text + node.templateSpans.map(({ literal }) => `{}${literal.text}`).join('')];
  return node.getChildren().flatMap(sentencesOf);
}

/** Every sentence that stands in these sources: begins with a capital or a blank, and ends with a full stop. */
function toldIn(path: string): string[] {
  const text = readFileSync(path, 'utf8');
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  return sentencesOf(source).filter(sentence => /^["A-Z{].*[.]$/.test(sentence) && sentence.includes(' '));
}

const inSources = readdirSync('src/interview', { recursive: true, encoding: 'utf8' }).flatMap(name =>
  name.endsWith('.ts') ? toldIn(`src/interview/${name}`) : [],
);

/** What a programmer reads, and nobody else. */
const internal = ['There is no question {}.', '{} has no unit.'];

describe.each(others)('the interview in the language %s', code => {
  const { bySentence: table } = languages[code];
  const rows = Object.keys(table);
  const lacks = (sentence: string) => !rows.some(row => row === sentence || patternOf(row).test(sentence));

  it('words every question, why it is asked, where the answer is found, and what may be chosen', () => {
    const told = [
      ...questions.flatMap(question => [
        question.ask,
        question.why ?? '',
        question.where ?? '',
        'because' in question ? (question.because ?? '') : '',
        ...(question.kind === 'choice' ? Object.values(question.choices) : []),
      ]),
      ...Object.values(fields).flatMap(({ why, where }) => [why, where]),
      ...Object.values(acceptableNames),
      ...Object.entries(sections).flatMap(([key, title]) => (key === 'provenance' ? [] : [title])),
      ...origins,
    ].filter(text => text !== '');
    expect([...new Set(told.filter(text => !Object.hasOwn(table, text)))]).toEqual([]);
  });

  it('words every refusal that stands in its sources', () => {
    expect(inSources.length).toBeGreaterThan(40);
    expect(inSources.filter(sentence => !internal.includes(sentence) && lacks(sentence))).toEqual([]);
  });

  it('words whatever is put forward, and where it comes from', () => {
    const language = languages[code];
    for (let seed = 1; seed <= 4; seed += 1) {
      const answers = randomInterview(seed, seed % 3 === 0);
      let begun: Answers = {};
      for (let next = nextQuestion(begun, true); next; next = nextQuestion(begun, true)) {
        const { rule } = next.proposal?.origin ?? {};
        if (rule !== undefined) expect([rule, lacks(rule)]).toEqual([rule, false]);
        const answer = answers[next.question.id] ?? next.proposal;
        if (!answer) break;
        begun = withAnswer(begun, next.question.id, answer);
      }
    }
    const own = nextQuestion({ real: { value: false, origin: { from: 'plate' } } }, false, language);
    expect(own?.proposal && originText(own.proposal.origin, language)).not.toMatch(/assumed|common practice/);
  });

  it('has the same blanks in every row', () => {
    const blanks = (text: string) => [...(text.match(/\{(?:words)?\}/g) ?? [])];
    for (const [sentence, told] of Object.entries(table))
      expect([sentence, blanks(told)]).toEqual([sentence, blanks(sentence)]);
  });

  it('words what is wrong with a profile, whatever is', () => {
    const engines = [1, 2, 5].map(seed => profileData(randomInterview(seed)));
    const english: string[] = [];
    for (let seed = 1; seed <= 100; seed += 1) {
      const { text } = broken(engines[seed % engines.length], seeded(seed, 'broken'));
      try {
        parseProfile(text, 'broken');
      } catch (error) {
        if (!(error instanceof ProfileError)) throw error;
        // The field, what was given, and the whole line in words of the language.
        english.push(
          ...error.faults.filter(fault =>
            /is missing|not allowed|expected|too (big|small)|has to/.test(bySentence(fault, table)),
          ),
        );
      }
    }
    expect(english).toEqual([]);
  });

  it('words what is wrong with a job card', () => {
    try {
      parseJobCard({ vehicle: '', colour: 'red' }, 'card.json');
      expect.unreachable();
    } catch (error) {
      if (!(error instanceof JobCardError)) throw error;
      const told = error.message.split('\n').map(line => bySentence(line, table));
      expect(told.length).toBeGreaterThan(4);
      expect(told.join('\n')).not.toMatch(/Job card|is missing|expected|not a known key|It holds/);
    }
  });
});

describe('what is typed', () => {
  const typed = (text: string, id: Parameters<typeof questionOf>[0]) => answerTyped(text, questionOf(id), {});

  it('is taken in the words of every language', () => {
    expect(typed('oui', 'real')).toMatchObject({ ok: true, value: true });
    expect(typed('Sí', 'real')).toMatchObject({ ok: true, value: true });
    expect(typed('non', 'real')).toMatchObject({ ok: true, value: false });
    expect(typed('un bateau', 'use')).toMatchObject({ ok: true, value: 'marine' });
    expect(typed('aucun', 'prelube')).toMatchObject({ ok: true, value: null });
    expect(typed('650 à 750', 'idle.warm')).toMatchObject({ ok: true, value: [650, 750] });
    expect(typed('82 manuel', 'thermostat.opensC')).toMatchObject({
      value: 82,
      origin: { from: 'manual' },
    });
    expect(typed('150 medido', 'starter.crankingRpm')).toMatchObject({ origin: { from: 'measured' } });
    expect(typed('12 página 4', 'oil.capacityL')).toMatchObject({ origin: { from: 'manual', page: '4' } });
  });

  it('is refused where it holds a word that stops: it is read out beside the microphone', () => {
    for (const name of ['Stop lever', 'levier, arrêtez', 'the emergency stop'])
      expect([name, typed(name, 'cutOff')]).toMatchObject([name, { ok: false }]);
    expect(typed('oil pressure, engine stop', 'lamps')).toMatchObject({ ok: false });
    expect(typed('stopper at the bulkhead', 'cutOff')).toMatchObject({ ok: true });
  });
});

describe('what things are called', () => {
  it('in French is put forward in French, and is the same thing to the record and to the bus', () => {
    const { fr } = languages;
    const lamps = nextQuestion(
      Object.fromEntries(Object.entries(randomInterview(5)).filter(([id]) => id !== 'lamps')),
      false,
      fr,
    );
    expect(lamps?.question.id).toBe('lamps');
    expect(lamps?.proposal?.value).toContain("pression d'huile");
    expect(idOf("Pression d'huile")).toBe('oilPressure');
    expect(idOf('préchauffage')).toBe('waitToStart');
    expect(idOf('alerte rouge')).toBe('redStop');
  });

  it('is shown in the language that is asked for', () => {
    const { fr, es } = languages;
    expect(showValue(true, questionOf('real'), 'metric', fr)).toBe('oui');
    expect(questionWords(questionOf('use'), es).choices).toContainEqual(['marine', 'un barco']);
    expect(questionWords(questionOf('warmUp.readEveryS'), fr).ask).toBe('Fréquence de lecture du liquide');
    expect(originText({ from: 'manual', page: '7' }, fr)).toBe('manuel page 7');
  });
});
