import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

/** A package that is installed with the product, and what it says of its licence. */
export interface ShippedPackage {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly author: string;
  /** The licence in its own words; none where it brings no such file, or is made for another machine. */
  readonly texts: readonly string[];
}

const lockSchema = z.object({
  packages: z.record(
    z.string(),
    z.object({
      version: z.string().optional(),
      license: z.string().optional(),
      dev: z.boolean().optional(),
      devOptional: z.boolean().optional(),
      optional: z.boolean().optional(),
    }),
  ),
});

const person = z.union([z.string(), z.object({ name: z.string() }).transform(({ name }) => name)]);
const packageSchema = z.object({
  license: z.string().optional().catch(undefined),
  author: person.optional(),
});

const LICENCE_FILE = /^(licen[cs]e|copying|notice|copyright)/i;
/** Where package.json names no licence, the one that its text is. */
const KNOWN_BY_TEXT: readonly (readonly [words: RegExp, licence: string])[] = [
  [/Apache License\s+Version 2\.0/, 'Apache-2.0'],
  [/Permission is hereby granted, free of charge/, 'MIT'],
];

/** Everything that package-lock.json installs without the development dependencies, by name. */
export function shippedPackages(root: string): readonly ShippedPackage[] {
  const lock = lockSchema.parse(JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')));
  return Object.entries(lock.packages)
    .filter(([path, { dev, devOptional }]) => path !== '' && !dev && !devOptional)
    .map(([path, { version = '', license, optional }]) => {
      const folder = join(root, path);
      // What is made for one kind of machine only is installed nowhere else: its licence is that of what it is part of.
      const own = optional ? {} : ownWords(folder);
      const { texts = [], author = '' } = own;
      const byText = KNOWN_BY_TEXT.find(([words]) => texts.some(text => words.test(text)))?.[1];
      return {
        name: path.replace(/^.*node_modules\//, ''),
        version,
        licence: license ?? own.license ?? byText ?? '',
        author,
        texts,
      };
    })
    .sort((a, b) => (a.name + a.version < b.name + b.version ? -1 : 1));
}

function ownWords(folder: string) {
  const manifest = join(folder, 'package.json');
  if (!existsSync(manifest)) return {};
  const { license, author } = packageSchema.parse(JSON.parse(readFileSync(manifest, 'utf8')));
  const texts = readdirSync(folder)
    .filter(name => LICENCE_FILE.test(name))
    .sort()
    .map(name => readFileSync(join(folder, name), 'utf8'));
  return { license, author, texts };
}
