import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { EQUIVALENTS, whyEquivalent } from '../../../bench/mutants/equivalents.ts';
import { folders, sourcesIn, testsOf } from '../../../bench/mutants/folders.ts';
import { mutantsPage } from '../../../bench/mutants/page.ts';

describe('which tests hold a file', () => {
  test('are those of the innermost folder that has some', () => {
    expect(testsOf('machines/limits/oil.ts')).toEqual(['tests/machines/{limits,impossible}/*.test.ts']);
    expect(testsOf('machines/phases/00-job.ts')).toEqual(['tests/machines/phases/*.test.ts']);
    expect(testsOf('machines/steps.ts')).toContain('tests/machines/{impossible,phases}/*.test.ts');
  });

  test('are not known outside of the folders, whatever their names begin with', () => {
    expect(testsOf('src/recorder/x.ts')).toBeUndefined();
    expect(testsOf('src/server/index.ts')).toBeUndefined();
  });

  test.each(folders)('%s is there, with sources in it', folder => {
    expect(sourcesIn(folder).length).toBeGreaterThan(0);
  });
});

describe('what is called equivalent', () => {
  test.each(EQUIVALENTS)('$file: $text is still a line of it', ({ file, text, why }) => {
    const lines = readFileSync(file, 'utf8').split('\n');
    expect(lines.map(line => line.trim())).toContain(text);
    expect(why).not.toBe('');
  });

  test('is so for the replacements that are named only', () => {
    const [named] = EQUIVALENTS.filter(({ replacements }) => replacements !== undefined);
    if (!named) throw new Error('No entry names its replacements.');
    const survivor = { line: 1, mutator: 'any', status: 'survived', text: named.text } as const;
    expect(whyEquivalent(named.file, { ...survivor, replacement: named.replacements?.[0] ?? '' })).toBe(
      named.why,
    );
    expect(whyEquivalent(named.file, { ...survivor, replacement: 'something else' })).toBeUndefined();
    expect(whyEquivalent('another.ts', { ...survivor, replacement: '' })).toBeUndefined();
  });
});

describe('the page', () => {
  test('sums up a folder, counts an endless loop as noticed, and tells apart what is equivalent', () => {
    const survivor = { mutator: 'StringLiteral', status: 'survived' } as const;
    const page = mutantsPage({
      'src/engineering/starter.ts': {
        killed: 6,
        timedOut: 1,
        survivors: [
          { ...survivor, line: 102, text: 'temperatureC >= model.limitC', replacement: 'false' },
          { ...survivor, line: 7, text: 'a | b', replacement: '""' },
        ],
      },
      'src/engineering/units.ts': {
        killed: 0,
        timedOut: 0,
        survivors: [{ ...survivor, line: 3, text: 'c', replacement: '', status: 'no coverage' }],
      },
    });
    const all = sourcesIn('src/engineering').length;
    expect(page).toContain(`| src/engineering | 2 of ${all} | 10 | 6 | 2 | 1 | 1 | 70.0 % | 1 | 77.8 % |`);
    expect(page).toContain('| 7 | StringLiteral | `` a \\| b `` | `` "" `` | **open** |');
    expect(page).toContain('| 3 | StringLiteral | `` c `` | nothing | **not covered** |');
    expect(page).toMatch(/\| 102 \|.*seconds to reach/);
    expect(page).toMatch(/\| src\/record \| 0 of \d+ \| not measured/);
  });
});
