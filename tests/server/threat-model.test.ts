import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const root = new URL('../../', import.meta.url);
const read = (path: string) => readFileSync(new URL(path, root), 'utf8');
const model = read('docs/threat-model.md');

/** Each test that the model names, with its file: names stand before the file, in italics. */
function named(): { readonly name: string; readonly file: string }[] {
  const found: { name: string; file: string }[] = [];
  for (const line of model.split('\n').filter(each => each.startsWith('- '))) {
    let names: string[] = [];
    for (const [, name, file] of line.matchAll(/\*([^*]+)\*|\(`([^`]+\.test\.ts)`\)/g)) {
      if (name) names.push(name);
      if (!file) continue;
      found.push(...names.map(each => ({ name: each, file })));
      names = [];
    }
    expect([line, names]).toEqual([line, []]);
  }
  return found;
}

test('Each line of the threat model names a test, and each of these tests is there', () => {
  const lines = model.split('\n').filter(line => line.startsWith('- '));
  expect(lines.length).toBeGreaterThan(20);
  for (const line of lines) expect(line).toMatch(/\*[^*]+\*.*`[^`]+\.test\.ts`/);
  for (const { name, file } of named()) {
    const text = read(`tests/server/${file}`).replaceAll(/\s+/g, ' ');
    expect([file, name, text.includes(name)]).toEqual([file, name, true]);
  }
});

test('Files that the model names beside are there too', () => {
  for (const [, path = ''] of model.matchAll(/`(tests\/[^`]+\.test\.ts)`/g))
    expect([path, existsSync(new URL(path, root))]).toEqual([path, true]);
});
