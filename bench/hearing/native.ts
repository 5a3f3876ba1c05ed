import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { encodeWav } from '../../src/voice/audio/wav-encode.ts';
import { toJsgf } from '../../src/voice/jsgf.ts';
import { englishPronunciations } from '../../src/voice/languages/pronunciations/english-additions.ts';
import { createMatcher } from '../../src/voice/meaning.ts';
import type { Grammar } from '../../src/voice/ports.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import { isMeant, nothingTaken, type Taken } from './count.ts';
import type { Placed, Scene } from './scene.ts';

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

interface Cut {
  readonly utterance: Placed;
  readonly samples: Float32Array;
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

/**
 * Debian's native PocketSphinx, as packaged, on the same sound with the same grammars. It is told where each
 * utterance lies, which our own ear has to find out; it has no filler and no threshold, so nothing is unclear to it.
 */
export function hearNatively(scenes: readonly Scene[]): ReadonlyMap<Scene, Taken> {
  const packaged = readFileSync(`${model}/cmudict-en-us.dict`, 'utf8').split('\n');
  const results = new Map(scenes.map(scene => [scene, nothingTaken()]));
  const byGrammar = new Map<string, { readonly scene: Scene; readonly cut: Cut }[]>();
  for (const scene of scenes) {
    for (const utterance of scene.utterances) {
      const samples = scene.samples.subarray(utterance.fromSample, utterance.toSample);
      const key = JSON.stringify(utterance.grammar);
      byGrammar.set(key, [...(byGrammar.get(key) ?? []), { scene, cut: { utterance, samples } }]);
    }
  }
  for (const all of byGrammar.values()) {
    const grammar = all[0]?.cut.utterance.grammar;
    if (!grammar) continue;
    const { meaningOf } = createMatcher(grammar);
    const texts = decode(
      grammar,
      all.map(({ cut }) => cut),
      packaged,
    );
    all.forEach(({ scene, cut }, i) => {
      const meaning = meaningOf(texts[i] ?? '');
      const taken = results.get(scene) ?? nothingTaken();
      if (meaning === undefined) taken.unclear++;
      else if (isMeant(cut.utterance.means, meaning)) taken.right++;
      else if (meaning.kind === 'stop') taken.falseStop++;
      else taken.wrong++;
    });
  }
  return results;
}
