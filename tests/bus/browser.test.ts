import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Every file that an entry reaches, and every import of them that is no file. */
function reach(entry: string): { files: Set<string>; others: Set<string> } {
  const files = new Set<string>();
  const others = new Set<string>();
  const waiting = [resolve(entry)];
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    if (files.has(file)) continue;
    files.add(file);
    for (const [, from = ''] of readFileSync(file, 'utf8').matchAll(/from '([^']+)'/g))
      if (from.startsWith('.')) waiting.push(join(dirname(file), from));
      else others.add(from);
  }
  return { files, others };
}

describe('The browser’s entry to the bus', () => {
  it('reaches no Node module and no package', () => {
    const { files, others } = reach('src/bus/browser.ts');
    expect(files.size).toBeGreaterThan(20);
    expect([...others]).toEqual([]);
  });

  it('is told apart from what does reach Node', () => {
    expect([...reach('src/bus/sources/candump-child.ts').others]).toEqual(['node:child_process']);
  });
});
