import { describe, expect, it } from 'vitest';
import { french } from '../../../prompts/fr/index.ts';
import { Viewer } from '../../../src/session/viewer.ts';
import { largestLetters } from '../../../src/terminal/face/big-letters.ts';
import { hintLine } from '../../../src/terminal/face/parts/input-line.ts';
import { askedLines, plainLines } from '../../../src/terminal/face/plain-lines.ts';
import { type Size, screenRows } from '../../../src/terminal/face/screen.ts';
import { widthOf, wrap } from '../../../src/terminal/face/text.ts';
import { nothingTyped } from '../../../src/terminal/face/typing.ts';
import { faceWords } from '../../../src/terminal/face/words/index.ts';
import { goUntil, rig } from '../../helpers/session-rig.ts';
import { alikeIn, blanksOf, foundIn, textsOf, wordsOnlyIn } from '../../helpers/words.ts';
import { everyView } from './views.ts';

const textsIn = (words: object) => textsOf(words).map(([, text]) => text);
const englishOnly = wordsOnlyIn(textsIn(faceWords.en), textsIn(faceWords.fr));
const frenchOnly = wordsOnlyIn(textsIn(faceWords.fr), textsIn(faceWords.en));

const sizes: readonly Size[] = [
  { columns: 80, rows: 24 },
  { columns: 120, rows: 40 },
  { columns: 60, rows: 20 },
];

const linesOf = (view: ReturnType<Viewer['view']>, size: Size) =>
  screenRows(view, size, nothingTyped, faceWords.fr).map(row => row.map(({ text }) => text).join(''));

describe('the words of the face', () => {
  it('have the same blanks in every language', () => {
    expect(blanksOf(faceWords.fr)).toEqual(blanksOf(faceWords.en));
  });

  it('are the same in both languages where the word itself is', () => {
    expect(alikeIn(faceWords.fr, faceWords.en)).toEqual(['first-fire', 'code SPN']);
  });

  it('are others in French than in English', () => {
    expect(englishOnly.length).toBeGreaterThan(40);
    expect(frenchOnly.length).toBeGreaterThan(40);
  });
});

describe('the terminal of a session in French', () => {
  it('shows a whole start with a stop, a pause and a wrong reading without an English label, at 60 columns too', async () => {
    const run = await rig('demo-six', 'metric', undefined, 'fr');
    const viewer = new Viewer(run.session, faceWords.fr.keysOnly);
    const seen = new Set<string>();
    let plain = '';
    let before: ReturnType<Viewer['view']> | null = null;
    viewer.watch(() => {
      const view = viewer.view();
      for (const size of sizes) {
        const lines = linesOf(view, size);
        for (const line of lines) expect(widthOf(line), line).toBeLessThanOrEqual(size.columns);
        seen.add(lines.join('\n'));
      }
      const [asked] = askedLines(null, view, faceWords.fr);
      plain += `${[...plainLines(before, view, faceWords.fr), ...asked].join('\n')}\n`;
      before = view;
    });
    await run.session.begin();
    await run.type('fichtre');
    await goUntil(run, 'fill.coolantBleed.counting');
    await run.type('pause');
    await run.type('continuer');
    await goUntil(run, 'checks.oilPressure.asking');
    for (const reply of ['0,2', 'correct', 'tout est éteint', 'correct', 'correct', 'prêt', 'correct'])
      await run.type(reply);
    await goUntil(run);
    await run.record.close();
    // The profile's own names of lamps, sensors and parts are in English.
    const ownNames = ['heater', 'coolant'];
    const all = [...seen, plain].join('\n');
    expect(foundIn(all, englishOnly).filter(word => !ownNames.includes(word))).toEqual([]);
    for (const words of ['STOP - COUPEZ LE CONTACT', 'EN PAUSE', 'DÉMARREUR ENGAGÉ', 'MOTEUR TOURNANT'])
      expect(all).toContain(words);
    expect(all).toContain('DÉMARRAGE SIGNÉ');
    expect(all).toContain('REFUSÉ');
    expect(plain).toContain('Dites\u00a0: «\u00a0fiche correcte\u00a0» | «\u00a0pas encore\u00a0»');
    expect(plain).toMatch(/^== STOP - COUPEZ LE CONTACT/m);
  });

  it.each(Object.entries(everyView))('says on every screen how to stop: "%s"', (_name, view) => {
    for (const size of sizes) expect(linesOf(view, size).join('\n')).toContain('Échap = STOP');
  });

  it('says at 80 columns all that the keys do, and what leaving does not', () => {
    expect(hintLine(false, 'off', 80, faceWords.fr).text).toBe(
      'Échap = STOP   Entrée = envoyer   Ctrl-C 2 fois = quitter   Haut = rappel',
    );
    expect(hintLine(true, 'running', 80, faceWords.fr).text).toContain("Quitter n'éteint pas le moteur.");
  });

  it('says that all is stopped, and that the engine may turn, whole at 80 columns', () => {
    expect(linesOf(everyView.stopped, { columns: 80, rows: 24 }).join('\n')).toContain(
      '!!! STOP - COUPEZ LE CONTACT - LE MOTEUR PEUT ENCORE TOURNER !!!',
    );
  });

  it('has numbers with a comma, in a range that it puts in words', () => {
    const number = { name: 'tension de charge', unit: 'V', min: 9.5, max: 16 };
    const [lines] = askedLines(null, { ...everyView.filling, number }, faceWords.fr);
    const [, said = ''] = lines.join('\n').split('Dites\u00a0: ');
    expect(said).toMatch(/^tension de charge 9,5 à 16 V \|/);
  });

  it('never begins a line with a mark that belongs to the word before', () => {
    expect(wrap('Le circuit est-il plein\u00a0?', 24)).toEqual(['Le circuit est-il', 'plein\u00a0?']);
  });

  it('has large letters for the title of every step', () => {
    for (const { title } of Object.values(french.steps))
      expect(largestLetters(title, 78, 9).length, title).toBeGreaterThan(0);
  });
});
