import { execFileSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import PDFDocument from 'pdfkit';
import { beforeAll, describe, expect, test } from 'vitest';
import { english } from '../../prompts/en/index.ts';
import { french } from '../../prompts/fr/index.ts';
import type { LanguageCode } from '../../prompts/types.ts';
import { englishFindings, faultOf } from '../../src/record/index.ts';
import { buildDocument } from '../../src/report/document/build.ts';
import { toExport } from '../../src/report/export/json.ts';
import { renderHtml } from '../../src/report/html/page.ts';
import type { ReportModel } from '../../src/report/model.ts';
import { renderPdf } from '../../src/report/pdf/render.ts';
import { MARGIN } from '../../src/report/pdf/sheet.ts';
import { headStyle, PAD } from '../../src/report/pdf/table.ts';
import { TextSetter } from '../../src/report/pdf/text.ts';
import { summarize } from '../../src/report/summarize.ts';
import { reportWords } from '../../src/report/words/index.ts';
import { goUntil, rig } from '../helpers/session-rig.ts';
import { alikeIn, blanksOf, foundIn, textsOf, wordsOnlyIn } from '../helpers/words.ts';
import { startWithMishaps } from './mishaps.ts';
import { demoHeader, inputOf, tempFolder, writeLog } from './support.ts';

/** The frame and the session's own names in one language; wordings that people say are no part of a report. */
const frameOf = (code: LanguageCode) => {
  const { steps, phases, gates, causes, people, quantities } = code === 'en' ? english : french;
  const names = { phases, gates, causes, people };
  const titles = Object.values(steps).map(({ title }) => title);
  const gauges = Object.values(quantities).map(({ name }) => name);
  const { sources: _, ...frame } = reportWords[code];
  return [...textsOf({ frame, names }).map(([, text]) => text), ...titles, ...gauges];
};

const wordsOf = (code: LanguageCode, other: LanguageCode) => wordsOnlyIn(frameOf(code), frameOf(other));

const entities: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  '#39': "'",
};

/** What a reader of the page reads, and what a screen reader reads out. */
const readable = (html: string): string =>
  (html.split('<body>')[1] ?? '')
    .replace(/aria-label="([^"]*)"/g, '>$1<')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&(#?\w+);/g, (_, name: string) => entities[name] ?? '');

/** What the profile says of its own parts and fault codes, in its own words. */
const profileTexts = ({ profile }: ReportModel): string[] => textsOf(profile ?? {}).map(([, text]) => text);

/** The name of who published a table is the same in every language. */
const BODY = 'Battery Council International';

/** The report of a model without the texts that come from the profile, and without English sources. */
function readableWithoutProfile(model: ReportModel): string {
  const html = readable(renderHtml(buildDocument(model, 'metric')));
  const sources = model.readings.flatMap(({ verdict }) => verdict?.source ?? []);
  return [...profileTexts(model), ...sources, BODY]
    .filter(text => text.length > 4)
    .toSorted((a, b) => b.length - a.length)
    .reduce((text, own) => text.replaceAll(own, ' '), html);
}

async function pdfText(model: ReportModel): Promise<string> {
  const path = join(tempFolder(), 'report.pdf');
  writeFileSync(path, await renderPdf(buildDocument(model, 'metric'), new Date(0)));
  return execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' });
}

const A4_TEXT_WIDTH = 595.28 - 2 * MARGIN;

const models: Partial<Record<LanguageCode, ReportModel>> = {};
const modelIn = (code: LanguageCode): ReportModel => {
  const model = models[code];
  if (!model) throw new Error(`no session was led in ${code}`);
  return model;
};

beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'french-'));
  for (const code of ['fr', 'en'] as const)
    models[code] = summarize(await inputOf(await startWithMishaps(join(folder, `${code}.jsonl`), code)));
});

describe('the words of a report', () => {
  test('have the same blanks in every language', () => {
    const [inEnglish, inFrench] = [reportWords.en, reportWords.fr].map(words =>
      blanksOf({ ...words, sources: {} }),
    );
    // Where English counts "the one entry", French may name the number, and the other way round.
    const butTheNumber = (blanks: Record<string, string[]> = {}) =>
      Object.fromEntries(
        Object.entries(blanks).map(([place, names]) => [place, names.filter(name => name !== 'n')]),
      );
    expect(butTheNumber(inFrench)).toEqual(butTheNumber(inEnglish));
  });

  test('are the same in both languages where the word itself is', () => {
    expect(alikeIn(reportWords.fr, reportWords.en).toSorted()).toEqual(['Code', 'Signature', 'Signatures']);
  });

  test('are in one language only, most of them', () => {
    expect(wordsOf('en', 'fr').length).toBeGreaterThan(150);
    expect(wordsOf('fr', 'en').length).toBeGreaterThan(150);
  });
});

describe.each(['en', 'fr'] as const)('the tables of a report in %s', code => {
  test('have room on paper for each word over a column, beside the next one', () => {
    const doc = new PDFDocument({ autoFirstPage: false });
    const text = new TextSetter(doc);
    const tables = buildDocument(modelIn(code), 'metric').blocks.filter(block => block.type === 'table');
    expect(tables.length).toBeGreaterThan(5);
    for (const { columns } of tables)
      for (const { title, width } of columns)
        expect(text.width(title, headStyle) + 2 * PAD, title).toBeLessThan(width * A4_TEXT_WIDTH);
  });
});

describe('the report of a session in French', () => {
  test('has no English word of the frame or of the procedure left', () => {
    expect(foundIn(readableWithoutProfile(modelIn('fr')), wordsOf('en', 'fr'))).toEqual([]);
  });

  test('says in French what the same session in English says in English', () => {
    const said = (code: LanguageCode, other: LanguageCode) =>
      foundIn(readableWithoutProfile(modelIn(code)), wordsOf(code, other)).length;
    expect(said('en', 'fr')).toBeGreaterThan(100);
    expect(said('fr', 'en')).toBeGreaterThan(100);
    expect(foundIn(readableWithoutProfile(modelIn('en')), wordsOf('fr', 'en'))).toEqual([]);
  });

  test('tells the same story: as many blocks of the same kinds, rows and cells', () => {
    const shape = (code: LanguageCode) =>
      buildDocument(modelIn(code), 'metric').blocks.map(block =>
        block.type === 'table' ? [block.type, block.rows.length] : [block.type],
      );
    expect(shape('fr')).toEqual(shape('en'));
  });

  test('says first how far it can be believed, then how the start ended', () => {
    const { blocks, title } = buildDocument(modelIn('fr'), 'metric');
    expect(blocks[0]).toMatchObject({
      tone: 'good',
      text: expect.stringMatching(
        /^Vérifié\u00a0: les \d+ entrées sont enchaînées telles qu'elles ont été écrites\.$/,
      ),
    });
    expect(blocks.find(({ type }) => type === 'lead')).toMatchObject({
      text: expect.stringMatching(
        /^Démarrage signé après [^:]+min\u00a0: toutes les conditions validées \(27\), 1 arrêt d'urgence, 2 points ouverts\.$/,
      ),
    });
    expect(title).toBe('Premier démarrage\u00a0: V');
  });

  test('holds the notice that the maker comes first, and the warnings that were given', () => {
    const { cautions } = modelIn('fr');
    expect(cautions.map(({ text }) => text)).toEqual([
      expect.stringMatching(/^Avis\. Les instructions du fabricant, .* passent d'abord/),
      expect.stringMatching(/^Avertissement\. Loin du ventilateur .* urgence chirurgicale/),
      'Lâchez le démarreur !',
      "Stop : pas de pression d'huile ! Coupez le contact.",
      "Avertissement. Clé retirée, batterie débranchée avant d'y mettre les mains.",
    ]);
    const page = readable(renderHtml(buildDocument(modelIn('fr'), 'metric')));
    expect(page).toContain('Mises en garde données');
    expect(page).toContain("N'ouvrez jamais un bouchon chaud.");
    expect(modelIn('en').cautions).toHaveLength(5);
  });

  test('names the source of every rule in French', async () => {
    const run = await rig('demo-four', 'metric', undefined, 'fr');
    await run.session.begin();
    await goUntil(run);
    await run.record.close();
    const readings = [...modelIn('fr').readings, ...summarize(await inputOf(run.path)).readings];
    const sources = new Set(readings.flatMap(({ verdict }) => verdict?.source ?? []));
    expect(sources.size).toBeGreaterThan(9);
    for (const source of sources) expect(Object.keys(reportWords.fr.sources)).toContain(source);
    const page = readable(renderHtml(buildDocument(modelIn('fr'), 'metric')));
    for (const source of sources) expect(page).not.toContain(source);
  });

  test('leaves what the profile says of its fault codes as the profile has it', () => {
    const page = readable(renderHtml(buildDocument(modelIn('fr'), 'metric')));
    for (const { because } of modelIn('fr').faults) expect(page).toContain(because);
    expect(page).toContain('valeur basse');
  });

  test('says to the browser and to a reader of the PDF that it is French', async () => {
    const report = buildDocument(modelIn('fr'), 'metric');
    expect(renderHtml(report)).toContain('<html lang="fr">');
    expect((await renderPdf(report, new Date(0))).toString('latin1')).toContain('/Lang (fr)');
    expect(renderHtml(buildDocument(modelIn('en'), 'metric'))).toContain('<html lang="en">');
  });

  test('parts no mark from its word at the end of a line', () => {
    const page = readable(renderHtml(buildDocument(modelIn('fr'), 'metric')));
    expect(page).toMatch(/\u00a0:/);
    expect(page.match(/[\p{L}\d)] [:;?!»]|« /gu)).toBeNull();
    expect(page.match(/\d\.\d/g)).toBeNull();
  });

  test('is a PDF in French, with the numbers of its pages', async () => {
    const text = await pdfText(modelIn('fr'));
    expect(text).toContain('Page 1 sur ');
    expect(text).toContain("Arrêts d'urgence et leurs causes");
    const flat = text.replace(/\s+/g, ' ');
    const english = wordsOf('en', 'fr');
    const profile = profileTexts(modelIn('fr')).join('\n').toLowerCase();
    expect(foundIn(flat, english).filter(word => !profile.includes(word.toLowerCase()))).toEqual([]);
  });

  test('is exported in English all the same: programs read that', async () => {
    const exported = toExport(modelIn('fr'), []);
    expect(exported.outcome).toMatch(/^Signed off after/);
    expect(exported.openItems).toContain('Skipped: Freeze point measured (not fitted)');
  });
});

describe('a French record that cannot be believed', () => {
  test.each([
    { finding: { found: 'altered', line: 12 }, text: 'La ligne 12 a été modifiée' },
    { finding: { found: 'torn', line: 12 }, text: 'La ligne 12 est coupée' },
    { finding: { found: 'missing', line: 12, expected: 11, seq: 13 }, text: 'il manque 2 entrées' },
    { finding: { found: 'reordered', line: 12, rightfulLine: 14 }, text: "n'est pas à sa place" },
    { finding: { found: 'rehashed', line: 12 }, text: 'son empreinte refaite' },
  ] as const)('says so in French: $text', async ({ finding, text }) => {
    const { entries } = await inputOf(await headerOnly('fr'));
    const model = summarize({ entries, fault: faultOf(finding) });
    const [banner] = buildDocument(model, 'metric').blocks;
    expect(banner).toMatchObject({
      type: 'banner',
      tone: 'bad',
      text: expect.stringMatching(/^NON VÉRIFIÉ\u00a0: ce dossier n'est pas tel qu'il a été écrit\./),
      detail: expect.stringContaining("d'avant le défaut"),
    });
    expect(banner).toMatchObject({ text: expect.stringContaining(text) });
  });

  test('names every finding in words of its own', () => {
    const { findings } = reportWords.fr;
    const finding = { line: 5, monoMs: 1, beforeMs: 2, twinLine: 3, seq: 7, rightfulLine: 9, expected: 5 };
    for (const name of Object.keys(englishFindings.chain) as (keyof typeof englishFindings.chain)[]) {
      const sentences = [englishFindings, findings].map(({ chain }) =>
        // All members that any of them may have.
        (chain[name] as (finding: object) => string)(finding),
      );
      expect(new Set(sentences).size, name).toBe(2);
      expect(sentences[1], name).not.toMatch(/undefined|NaN|\bthe\b|\bline\b/);
    }
  });

  test('is not confirmed, in French, when it was altered and chained anew', async () => {
    const path = await headerOnly('fr', [{ kind: 'closed', data: { outcome: 'signedOff' } }]);
    const report = buildDocument(summarize(await inputOf(path)), 'metric');
    expect(report.warning).toMatch(
      /^NON CONFIRMÉ\u00a0: Rejoués, les événements du dossier ne mènent pas à la ligne 2\u00a0:/,
    );
    expect(report.blocks.find(({ type }) => type === 'lead')).toMatchObject({
      text: expect.stringMatching(/^Selon le dossier, non confirmé\u00a0: Démarrage signé/),
    });
  });
});

describe('the language of a report', () => {
  const langOf = async (header: Parameters<typeof writeLog>[2]) => {
    const path = join(tempFolder(), 'log.jsonl');
    await writeLog(path, [], header);
    return buildDocument(summarize(await inputOf(path)), 'metric').language;
  };

  test('is English where the record names none, or one that there is not', async () => {
    const header = await demoHeader();
    const { language: _, ...without } = header;
    expect(await langOf(without)).toBe('en');
    expect(await langOf({ ...header, language: 'xx' })).toBe('en');
    expect(await langOf({ ...header, language: 7 })).toBe('en');
    expect(await langOf({})).toBe('en');
  });

  test('is that of the record also where nothing else of its header can be read', async () => {
    expect(await langOf({ language: 'fr' })).toBe('fr');
  });
});

async function headerOnly(code: LanguageCode, entries: Parameters<typeof writeLog>[1] = []) {
  const path = join(tempFolder(), 'log.jsonl');
  await writeLog(path, entries, { ...(await demoHeader()), language: code });
  return path;
}
