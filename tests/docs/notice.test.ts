import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { shippedPackages } from '../../docs/notice/packages.ts';
import { noticeText } from '../../docs/notice/write.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const notice = readFileSync(new URL('../../NOTICE', import.meta.url), 'utf8');
const packages = shippedPackages(root);
const dependencies = Object.keys(
  JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')).dependencies,
);

describe('NOTICE', () => {
  it('is what `npm run notice` makes of the packages that are installed now', () => {
    expect(notice).toBe(noticeText(root));
  });

  it('names every dependency, and whatever comes with them, with a licence', () => {
    for (const name of dependencies) expect(notice).toMatch(new RegExp(`^${name} \\d`, 'm'));
    for (const { name, version, licence } of packages) {
      expect(licence, `${name} names no licence`).not.toBe('');
      expect(notice).toContain(`\n${name} ${version}: ${licence}`);
    }
  });

  it('holds no licence that would bind the whole', () => {
    for (const { name, licence } of packages) expect(licence, name).not.toMatch(/\b(A|L)?GPL/);
  });

  it('tells what the network learned from, and whose the dictionary is', () => {
    expect(notice).toMatch(/phone network of first-fire.*CREDITS\.md/);
    expect(notice).toMatch(/CMU Pronouncing Dictionary/);
  });
});
