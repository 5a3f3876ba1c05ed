import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { englishPronunciations } from '../../../acoustic-model/english-additions.ts';
import { encodeWav } from '../../../src/voice/audio/wav-encode.ts';
import { type Meaning, matcherOf } from '../../../src/voice/meaning.ts';
import type { Grammar } from '../../../src/voice/ports.ts';
import { speechRateHz } from '../../../src/voice/resample.ts';
import type { Cut, Peer } from './cuts.ts';
import { toJsgf } from './jsgf.ts';

const model = '/usr/share/pocketsphinx/model/en-us';
const program = '/usr/bin/pocketsphinx_batch';

export const nativeInstalled = existsSync(program) && existsSync(model);

/** Words of a JSGF text: what stands outside rule names, weights and signs. */
const wordsOfJsgf = (jsgf: string) =>
  new Set(
    jsgf
      .replace(/#JSGF.*|grammar now;|public|<[^>]*>|\/[^/]*\//g, ' ')
      .split(/[\s()[\]|;=+]+/)
      .filter(word => word !== ''),
  );

/** The package's dictionary cut to the words of a grammar, so that each of many short runs starts quickly. */
function dictionaryOf(words: ReadonlySet<string>, packaged: readonly string[]): string {
  const known = packaged.filter(line => words.has(line.slice(0, line.search(/[ (]/))));
  const listed = new Set(known.map(line => line.slice(0, line.search(/[ (]/))));
  const own = [...words]
    .filter(word => !listed.has(word))
    .flatMap(word => (englishPronunciations[word] ?? []).slice(0, 1).map(phones => `${word} ${phones}`));
  return `${[...known, ...own].join('\n')}\n`;
}

/** What the program makes of each utterance, a grammar at a time. */
function decode(grammar: Grammar, cuts: readonly Cut[], packaged: readonly string[]): readonly string[] {
  const folder = mkdtempSync(join(tmpdir(), 'first-fire-native-'));
  try {
    const jsgf = toJsgf(grammar);
    writeFileSync(join(folder, 'now.jsgf'), jsgf);
    writeFileSync(join(folder, 'now.dict'), dictionaryOf(wordsOfJsgf(jsgf), packaged));
    cuts.forEach(({ samples }, i) => {
      writeFileSync(join(folder, `${i}.wav`), encodeWav({ samples, sampleRateHz: speechRateHz }));
    });
    writeFileSync(join(folder, 'ctl'), cuts.map((_, i) => `${i}\n`).join(''));
    const settings: Readonly<Record<string, string>> = {
      hmm: `${model}/en-us`,
      dict: join(folder, 'now.dict'),
      jsgf: join(folder, 'now.jsgf'),
      ctl: join(folder, 'ctl'),
      cepdir: folder,
      cepext: '.wav',
      adcin: 'yes',
      adchdr: '44',
      hyp: join(folder, 'hyp'),
      logfn: join(folder, 'log'),
    };
    const run = spawnSync(
      program,
      Object.entries(settings).flatMap(([name, value]) => [`-${name}`, value]),
    );
    if (run.status !== 0) throw new Error(`pocketsphinx_batch ended with ${run.status ?? run.signal}`);
    const lines = readFileSync(join(folder, 'hyp'), 'utf8').split('\n');
    return cuts.map((_, i) => lines.find(line => line.includes(`(${i} `))?.replace(/ *\(.*$/, '') ?? '');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const keyOf = ({ utterance }: Cut) => JSON.stringify(utterance.grammar);

/**
 * Debian's native PocketSphinx, as packaged, with the same grammars. It has no filler and no threshold, so nothing is
 * unclear to it.
 */
export const nativePocketSphinx: Peer = {
  name: 'native PocketSphinx',
  hear(cuts) {
    const packaged = readFileSync(`${model}/cmudict-en-us.dict`, 'utf8').split('\n');
    const meanings = new Map<Cut, Meaning | undefined>();
    for (const key of new Set(cuts.map(keyOf))) {
      const all = cuts.filter(cut => keyOf(cut) === key);
      const { grammar } = (all[0] as Cut).utterance;
      const texts = decode(grammar, all, packaged);
      for (const [i, cut] of all.entries()) meanings.set(cut, matcherOf(grammar).meaningOf(texts[i] ?? ''));
    }
    return Promise.resolve(cuts.map(cut => meanings.get(cut)));
  },
};
