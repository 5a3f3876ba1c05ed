import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { patternOf } from '../../prompts/by-sentence.ts';
import { languageCodes, usualLanguage } from '../../prompts/index.ts';
import { inOtherWords, refusals } from '../../src/tablet/words/refusals.ts';

const server = fileURLToPath(new URL('../../src/server', import.meta.url));
/** Told in the terminal of the laptop, which is English, or worded by language already. */
const notForDevices = ['desk.ts', 'trust'];

const sources = readdirSync(server, { recursive: true, encoding: 'utf8' })
  .filter(name => name.endsWith('.ts') && !notForDevices.some(each => name.startsWith(each)))
  .map(name =>
    ts.createSourceFile(name, readFileSync(join(server, name), 'utf8'), ts.ScriptTarget.Latest, true),
  );

/** The sentences that an expression may be, `{}` for what is put into them. */
function sentencesOf(node: ts.Expression): string[] {
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isConditionalExpression(node))
    return [...sentencesOf(node.whenTrue), ...sentencesOf(node.whenFalse)];
  if (ts.isTemplateExpression(node))
    return [node.head.text + node.templateSpans.map(({ literal }) => `{}${literal.text}`).join('')];
  return [];
}

/** Whatever the server refuses with: by `Refused`, by those that make one, or as a refusal's sentence. */
function refusedIn(node: ts.Node): string[] {
  const here: string[] = [];
  if (ts.isNewExpression(node) || ts.isCallExpression(node)) {
    const args = node.arguments ?? [];
    const name = node.expression.getText();
    const said = { Refused: args[1], refuse: args[1], notYours: args[0], OneAtATime: args[0] }[name];
    if (said) here.push(...sentencesOf(said));
  }
  if (ts.isPropertyAssignment(node) && node.name.getText() === 'sentence')
    here.push(...sentencesOf(node.initializer));
  return [...here, ...node.getChildren().flatMap(refusedIn)];
}

const refused = [...new Set(sources.flatMap(refusedIn))].filter(sentence => /^[A-Z]/.test(sentence));

describe('what the laptop refuses', () => {
  it('is worded in every language of the page', () => {
    expect(refused.length).toBeGreaterThan(55);
    const rows = Object.keys(refusals);
    const missing = refused.filter(
      sentence => !rows.some(row => row === sentence || patternOf(row).test(sentence)),
    );
    expect(missing).toEqual([]);
    for (const others of Object.values(refusals))
      expect([usualLanguage, ...Object.keys(others)].toSorted()).toEqual(languageCodes.toSorted());
  });

  it('has the same blanks in every language', () => {
    const blanks = (text: string) => text.split('{}').length - 1;
    for (const [sentence, others] of Object.entries(refusals))
      for (const told of Object.values(others))
        expect([told, blanks(told)]).toEqual([told, blanks(sentence)]);
  });

  it('is told with what was put into it', () => {
    const sentence = 'There is no profile "demo-five" here; choose demo-four or demo-six.';
    expect(inOtherWords(sentence, 'es')).toBe(
      'Aquí no hay ningún perfil «demo-five»; elija demo-four or demo-six.',
    );
    expect(inOtherWords(sentence, 'en')).toBe(sentence);
  });

  it('is told as it came where nobody has worded it', () => {
    expect(inOtherWords('Quite another thing.', 'fr')).toBe('Quite another thing.');
  });
});
