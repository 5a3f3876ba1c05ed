import { describe, expect, it } from 'vitest';
import { isOver, outcomeOf } from '../../../machines/moment.ts';
import { spanish } from '../../../prompts/es/index.ts';
import { Viewer } from '../../../src/session/viewer.ts';
import { largestLetters } from '../../../src/terminal/face/big-letters.ts';
import { askedLines, plainLines } from '../../../src/terminal/face/plain-lines.ts';
import { screenRows } from '../../../src/terminal/face/screen.ts';
import { widthOf } from '../../../src/terminal/face/text.ts';
import { nothingTyped } from '../../../src/terminal/face/typing.ts';
import { faceWords } from '../../../src/terminal/face/words/index.ts';
import { isHeard, voiceLanguage } from '../../../src/voice/languages/index.ts';
import { goUntil, rig } from '../../helpers/session-rig.ts';
import { alikeIn, blanksOf, foundIn, textsOf, wordsOnlyIn } from '../../helpers/words.ts';

const textsIn = (words: object) => textsOf(words).map(([, text]) => text);
const englishOnly = wordsOnlyIn(textsIn(faceWords.en), textsIn(faceWords.es));

describe('the words of the face in Spanish', () => {
  it('have the same blanks as in English, and are others', () => {
    expect(blanksOf(faceWords.es)).toEqual(blanksOf(faceWords.en));
    expect(alikeIn(faceWords.es, faceWords.en)).toEqual(['first-fire', 'Esc = STOP']);
  });

  it('has large letters for the title of every step', () => {
    for (const { title } of Object.values(spanish.steps))
      expect(largestLetters(title, 78, 9).length, title).toBeGreaterThan(0);
  });
});

describe('a start in Spanish', () => {
  it('goes to its end by keys alone, without an English label, at 60 columns too', async () => {
    const run = await rig('demo-four', 'metric', undefined, 'es', 'keys');
    const viewer = new Viewer(run.session, faceWords.es.keysOnly);
    let shown = '';
    let before: ReturnType<Viewer['view']> | null = null;
    viewer.watch(() => {
      const view = viewer.view();
      for (const size of [
        { columns: 80, rows: 24 },
        { columns: 60, rows: 20 },
      ]) {
        const lines = screenRows(view, size, nothingTyped, faceWords.es).map(row =>
          row.map(({ text }) => text).join(''),
        );
        for (const line of lines) expect(widthOf(line), line).toBeLessThanOrEqual(size.columns);
        shown += `${lines.join('\n')}\n`;
      }
      const [asked] = askedLines(null, view, faceWords.es);
      shown += `${[...plainLines(before, view, faceWords.es), ...asked].join('\n')}\n`;
      before = view;
    });
    await run.session.begin();
    await run.type('caramba');
    await goUntil(run, 'fill.coolantBleed.counting');
    await run.type('pausa');
    await run.type('continuar');
    await goUntil(run);
    await run.record.close();
    expect(isOver(run.session.moment) && outcomeOf(run.session.moment)).toBe('signedOff');
    // The profile's own names of lamps, sensors and parts are in English.
    const ownNames = ['heater', 'coolant'];
    expect(foundIn(shown, englishOnly).filter(word => !ownNames.includes(word))).toEqual([]);
    for (const words of ['EN PAUSA', 'MOTOR EN MARCHA', 'FIRMADO', 'Escriba:'])
      expect(shown).toContain(words);
  });

  it('is not heard: that is said, and the emergency is drilled with the button', () => {
    expect(isHeard('es')).toBe(false);
    expect(voiceLanguage('es').caution).toContain('no se oye');
    for (const id of ['job.stopTechnician', 'job.stopSecond'] as const) {
      expect(spanish.steps[id].ask).toContain('botón rojo');
      expect(spanish.steps[id].ask).toContain('Escape');
      expect(spanish.steps[id].ask).toContain('la voz no detiene nada');
    }
    for (const part of ['botón rojo', 'Escape']) expect(spanish.lines.askNextDrill).toContain(part);
    expect(spanish.lines.welcome).toContain('no se oye');
  });

  it.each(spanish.stopWordings)('is stopped by "%s" at the keys', async wording => {
    const run = await rig('demo-four', 'metric', undefined, 'es', 'keys');
    await run.session.begin();
    await goUntil(run, 'fill.coolantMix.asking');
    await run.type(wording);
    expect(run.key()).toMatch(/^stopped/);
    await run.record.close();
  });
});
