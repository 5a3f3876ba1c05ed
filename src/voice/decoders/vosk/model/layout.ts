import type { ArchiveFile } from './archive-file.ts';
import { containsBytes } from './bytes.ts';
import { Refusal } from './refusal.ts';

/**
 * The files of a Vosk model, by what the Vosk library reads (`Model::ConfigureV2` and `ReadDataFiles` in
 * src/model.cc of github.com/alphacep/vosk-api) and the list in the README of vosk-browser 0.0.8.
 */
const ALWAYS = ['am/final.mdl', 'conf/mfcc.conf', 'conf/model.conf'] as const;
/** A graph that is put together while it runs: only such a model can be told what may be said now. */
const DYNAMIC = ['graph/HCLr.fst', 'graph/Gr.fst', 'graph/disambig_tid.int'] as const;
const FIXED = 'graph/HCLG.fst';
const WORDS = 'graph/words.txt';
/** Where there is one of them, all are needed. */
const SPEAKER = [
  'final.ie',
  'final.dubm',
  'final.mat',
  'global_cmvn.stats',
  'online_cmvn.conf',
  'splice.conf',
].map(name => `ivector/${name}`);

const bytesOfText = (text: string) => new TextEncoder().encode(text);

/** How files begin: OpenFst's `kFstMagicNumber` 2125659606, least byte first; Kaldi's binary mark and the first token. */
const FST_BEGINS = Uint8Array.of(0xd6, 0xfd, 0xb2, 0x7e);
const MODEL_BEGINS = bytesOfText('\0B<TransitionModel>');

const beginsWith = (bytes: Uint8Array, start: Uint8Array) => start.every((byte, i) => bytes[i] === byte);

/** A model's files, by their paths inside its folder. */
export type ModelFiles = ReadonlyMap<string, Uint8Array>;

/**
 * Finds the model's folder in an archive.
 * @throws Refusal when there is none, or more than one
 */
export function findModel(files: readonly ArchiveFile[]): {
  readonly folder: string;
  readonly files: ModelFiles;
} {
  const folders = files.flatMap(({ path }) => /^([^/]+\/|)am\/final\.mdl$/.exec(path)?.[1] ?? []);
  const [folder] = folders;
  if (folder === undefined)
    throw new Refusal('has no folder with am/final.mdl in it', 'bring a Vosk model as it was published');
  if (folders.length > 1) throw new Refusal('has more than one model in it', 'bring one at a time');
  const inside = files.filter(({ path }) => path.startsWith(folder));
  return {
    folder: folder.replace(/\/$/, ''),
    files: new Map(inside.map(({ path, bytes }) => [path.slice(folder.length), bytes])),
  };
}

/**
 * Whether the model's list of words has one: in words.txt a line with its number; inside Gr.fst a length of four
 * bytes, least first, before its letters (OpenFst's `WriteType` for strings).
 */
function knowsWord(files: ModelFiles, word: string): boolean {
  const letters = bytesOfText(word);
  const inGraph = Uint8Array.of(letters.length, 0, 0, 0, ...letters);
  const listed = files.get(WORDS);
  return listed === undefined
    ? containsBytes(files.get('graph/Gr.fst') ?? new Uint8Array(), inGraph)
    : containsBytes(listed, bytesOfText(`\n${word} `));
}

/**
 * Holds a model's files against what the recognizer needs of them.
 * @param stopWords words that the model has to know: one without them would not hear a stop
 * @throws Refusal, naming the first thing that is wrong
 */
export function checkLayout(files: ModelFiles, stopWords: readonly string[]): void {
  if (files.has(FIXED) && !files.has('graph/HCLr.fst'))
    throw new Refusal(
      'has one fixed graph (graph/HCLG.fst), so it cannot be told what may be said now',
      'bring a small model, which has graph/HCLr.fst and graph/Gr.fst',
    );
  const needed = [...ALWAYS, ...DYNAMIC, ...(SPEAKER.some(path => files.has(path)) ? SPEAKER : [])];
  for (const path of needed) {
    const bytes = files.get(path);
    if (bytes === undefined) throw new Refusal(`has no ${path}`, 'bring a Vosk model as it was published');
    if (bytes.length === 0) throw new Refusal(`has nothing in ${path}`);
    if (path.endsWith('.fst') && !beginsWith(bytes, FST_BEGINS))
      throw new Refusal(`has a ${path} that is no graph`);
  }
  if (!beginsWith(files.get('am/final.mdl') ?? new Uint8Array(), MODEL_BEGINS))
    throw new Refusal('has an am/final.mdl that is no acoustic model');
  const unknown = stopWords.filter(word => !knowsWord(files, word));
  if (unknown.length > 0)
    throw new Refusal(
      `does not know ${unknown.map(word => `"${word}"`).join(', ')}, so it would not hear every stop`,
      'bring a model of the language that is spoken',
    );
}
