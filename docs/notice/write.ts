import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inside } from './inside.ts';
import { type ShippedPackage, shippedPackages } from './packages.ts';

const HEAD = `NOTICE

first-fire is installed with the packages below and builds some of them into its page. Each stays under its own
licence. Made by \`npm run notice\` from package-lock.json and from what the packages say of themselves; a test holds
that it is up to date. Development dependencies are not shipped and not listed.
`;

/** Tells who holds the rights, not what they are. */
const HOLDER = /^\W*(Copyright\b(?!\W*(notice|licen[cs]e|owner|holder|$))|\(c\)|©)/;
const TITLE = /^\W*(the )?(MIT|ISC|BSD|Apache)?\s*licen[cs]e\W*(\(\w+\))?\W*$|^\W*all rights reserved\W*$/i;

const lines = (text: string) => text.replaceAll('\r', '').split('\n');
const holders = (text: string) => lines(text).filter(line => HOLDER.test(line.trim()));
const terms = (text: string) =>
  lines(text).filter(line => !HOLDER.test(line.trim()) && !TITLE.test(line.trim()));
/** Two texts with one key are the same licence, wherever their lines break. */
const keyOf = (text: string) =>
  terms(text)
    .join(' ')
    .replace(/[^A-Za-z0-9]+/g, ' ')
    .trim()
    .toLowerCase();

const trimmed = (text: string) =>
  lines(text)
    .map(line => line.trimEnd())
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim();

interface Licence {
  readonly text: string;
  readonly of: readonly { readonly who: string; readonly holders: readonly string[] }[];
}

function licences(packages: readonly ShippedPackage[], root: string): readonly Licence[] {
  const own = packages.flatMap(({ name, version, texts }) =>
    texts.map(text => ({ who: `${name} ${version}`, text })),
  );
  const within = inside.flatMap(({ what, where, text }) =>
    text === undefined ? [] : [{ who: `${what}, in ${where}`, text: readFileSync(join(root, text), 'utf8') }],
  );
  const byKey = new Map<string, Licence>();
  for (const { who, text } of [...own, ...within]) {
    const key = keyOf(text);
    const known = byKey.get(key);
    byKey.set(key, {
      text: known ? trimmed(terms(text).join('\n')) : trimmed(text),
      of: [...(known?.of ?? []), { who, holders: holders(text).map(line => line.trim()) }],
    });
  }
  return [...byKey.values()].sort((a, b) => b.of.length - a.of.length);
}

const rule = `\n${'='.repeat(110)}\n\n`;

/** The whole file, for the packages that the lock file in this folder installs. */
export function noticeText(root: string): string {
  const packages = shippedPackages(root);
  const listed = packages.map(
    ({ name, version, licence, author, texts }) =>
      `${name} ${version}: ${licence}${texts.length === 0 && author !== '' ? `, by ${author}` : ''}`,
  );
  const parts = inside.map(({ what, where, licence }) => `${what}\n    in ${where}: ${licence}`);
  // A text of one alone stands as it is; who shares one is listed above it.
  const texts = licences(packages, root).map(({ text, of }) =>
    [
      ...of.flatMap(({ who, holders }) => [
        who,
        ...(of.length > 1 ? holders.map(line => `    ${line}`) : []),
      ]),
      '',
      text,
    ].join('\n'),
  );
  return [
    HEAD,
    `\nPackages\n\n${listed.join('\n')}\n`,
    `\nWhat is inside some of them\n\n${parts.join('\n')}\n`,
    ...texts.map(text => `${rule}${text}\n`),
  ].join('');
}
