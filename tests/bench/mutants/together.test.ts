import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { figuresOfEvents } from '../../../bench/mutants/together.ts';

const FILE = 'src/engineering/fuel.ts';
const OTHER = 'machines/limits/oil.ts';

let folder = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'mutants-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

let count = 0;
const event = (name: string, data: unknown): void =>
  writeFileSync(join(folder, `${count++}-${name}.json`), JSON.stringify(data));

const plan = (...fileNames: string[]): void =>
  event('onMutationTestingPlanReady', { mutantPlans: fileNames.map(fileName => ({ mutant: { fileName } })) });

const tested = (fileName: string, status: string): void =>
  event('onMutantTested', {
    fileName,
    status,
    location: { start: { line: 1, column: 0 } },
    mutatorName: 'BlockStatement',
    replacement: '{}',
  });

describe('the events of a run of many files', () => {
  test('give the figures of a file of which each mutant was tried', () => {
    plan(FILE, FILE, FILE);
    tested(FILE, 'Killed');
    tested(FILE, 'Timeout');
    tested(FILE, 'Survived');
    const { figures, unfinished } = figuresOfEvents(folder);
    expect(unfinished).toEqual([]);
    expect(figures[FILE]).toMatchObject({
      killed: 1,
      timedOut: 1,
      survivors: [{ line: 1, status: 'survived' }],
    });
  });

  test('of a run that was ended early leave out the files that it did not get through', () => {
    plan(FILE, OTHER, OTHER);
    tested(FILE, 'Killed');
    tested(OTHER, 'Killed');
    expect(figuresOfEvents(folder)).toEqual({
      figures: { [FILE]: { killed: 1, timedOut: 0, survivors: [] } },
      unfinished: [OTHER],
    });
  });

  test('name a file as it stands in the project, wherever the run was', () => {
    plan(`/somewhere/src/copies/sandbox/${FILE}`);
    tested(`/somewhere/src/copies/sandbox/${FILE}`, 'Killed');
    expect(Object.keys(figuresOfEvents(folder).figures)).toEqual([FILE]);
  });

  test('that were never planned are refused', () => {
    expect(() => figuresOfEvents(folder)).toThrow(/no run of mutants/);
    expect(() => figuresOfEvents(join(folder, 'missing'))).toThrow(/no run of mutants/);
  });
});
