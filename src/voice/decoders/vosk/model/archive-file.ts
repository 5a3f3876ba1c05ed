import type { ModelLimits } from './limits.ts';
import { Refusal } from './refusal.ts';

/** One file out of an archive. */
export interface ArchiveFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** What systems add to archives by themselves. */
export const isClutter = (path: string): boolean => /(^|\/)(__MACOSX\/|\.DS_Store$|\._)/.test(path);

/** @throws Refusal for a path that could lead out of the folder it is unpacked to, or that no system would take */
function checkPath(path: string, { pathLength }: ModelLimits): void {
  const shown = JSON.stringify(path.slice(0, 60));
  const segments = path.replace(/\/$/, '').split('/');
  const escapes =
    path.startsWith('/') || path.includes('\\') || /^[A-Za-z]:/.test(path) || segments.includes('..');
  if (escapes) throw new Refusal(`has a file that leads out of its folder (${shown})`, 'do not use it');
  const odd = path.length > pathLength || segments.some(segment => segment === '' || segment === '.');
  // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what is looked for
  if (odd || /[\x00-\x1f\x7f]/.test(path)) throw new Refusal(`has a file with an unusable name (${shown})`);
}

/** Counts what comes out of an archive. */
export class Budget {
  readonly #limits: ModelLimits;
  #bytes = 0;
  readonly #paths = new Set<string>();

  constructor(limits: ModelLimits) {
    this.#limits = limits;
  }

  /** @throws Refusal when it is too much, or comes a second time */
  take(path: string, bytes: number): void {
    checkPath(path, this.#limits);
    if (this.#paths.has(path)) throw new Refusal(`has ${path} twice`);
    this.#paths.add(path);
    this.#bytes += bytes;
    const { files, unpackedBytes } = this.#limits;
    if (this.#paths.size > files)
      throw new Refusal(`has more than ${files} files`, 'bring a model as it was published');
    if (!(this.#bytes <= unpackedBytes))
      throw new Refusal('unpacks to more than a tablet can hold', 'bring a small model');
  }
}
