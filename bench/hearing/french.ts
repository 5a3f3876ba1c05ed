import { french } from '../../prompts/fr/index.ts';
import { createMatcher } from '../../src/voice/meaning.ts';
import type { Grammar } from '../../src/voice/ports.ts';
import { createEmbeddedRecognizer } from '../../src/voice/recognizers/embedded.ts';
import { everythingIn } from '../../tests/helpers/everything.ts';
import { hearScenes, type Level } from './accuracy.ts';
import { allOf, sum, type Taken } from './count.ts';
import { sameEar } from './listener.ts';
import { clipScenes, machineLoops, type SaidClip, saidTo, spokenClip } from './people/clip-scenes.ts';
import { clipsOf, notMeasured, peopleFolders } from './people/folders.ts';
import type { Clip } from './people/recordings.ts';

const usage = `npm run hearing:french -- --people <folder> ... [--split test] [--levels clean,10] [--most 60]
  hears the French of the folders`;

const numbers: Grammar = {
  key: 'numbers',
  language: 'fr',
  stop: french.stopWordings,
  replies: [],
  number: { id: 'n', language: 'fr', leads: [], units: [], min: 0, max: 100, step: 1 },
};
const everything = everythingIn(french, -40, 400);

/** What the clips of a source are said to: numbers alone, or everything; talk waits for a number or for anything. */
function saidClip(clip: Clip): SaidClip | undefined {
  const grammar = clip.source.startsWith('kokoro') ? everything : numbers;
  if (clip.kind === 'talk') return { clip, grammar: everything, means: undefined };
  // The sentences of people mean nothing to any grammar.
  return clip.kind === 'noise' ? undefined : (saidTo(clip, grammar) ?? { clip, grammar, means: undefined });
}

const told = (taken: Taken) =>
  `right ${taken.right}, asked again ${taken.unclear}, wrong ${taken.wrong}, false stop ${taken.falseStop} of ${allOf(taken)}`;

async function main(args: readonly string[]): Promise<void> {
  const { folders, rest } = peopleFolders(args);
  const option = (name: string, usual: string) =>
    rest.includes(name) ? (rest[rest.indexOf(name) + 1] ?? usual) : usual;
  if (rest.includes('--help') || folders.length === 0) {
    console.log(folders.length === 0 ? notMeasured : usage);
    return;
  }
  const all = clipsOf(folders);
  const loops = machineLoops(all);
  const clips = all.filter(({ split }) => split === option('--split', 'test'));
  const most = Number(option('--most', '60'));
  const levels = option('--levels', 'clean,10')
    .split(',')
    .map((level): Level => (level === 'clean' ? level : Number(level)));
  const ear = await createEmbeddedRecognizer({ language: 'fr' });
  for (const source of [...new Set(clips.map(clip => `${clip.source} ${clip.kind}`))].sort()) {
    const said = clips
      .filter(clip => `${clip.source} ${clip.kind}` === source)
      .flatMap(clip => saidClip(clip) ?? []);
    const some = said.filter((_, i) => i % Math.ceil(said.length / most) === 0).map(spokenClip);
    for (const level of levels) {
      const results = await hearScenes(clipScenes(some, level, loops), sameEar(ear));
      const wrong = results
        .flatMap(({ outcomes }) => outcomes)
        .flatMap(({ utterance, reports }) =>
          reports
            .filter(({ heard }) => heard.kind !== 'unclear' && !heardRightly(utterance, heard.text))
            .map(({ heard }) => `"${utterance.says}" as ${heard.kind} ${heard.text}`),
        );
      console.log(
        `${source} | ${level} | ${told(sum(results.map(({ taken }) => taken)))} | ${wrong.slice(0, 12).join('; ')}`,
      );
    }
  }
  ear.close();
}

const matchers = new Map([numbers, everything].map(grammar => [grammar, createMatcher(grammar)]));

function heardRightly(
  utterance: { readonly grammar: Grammar; readonly says: string },
  text: string,
): boolean {
  const matcher = matchers.get(utterance.grammar);
  const meant = utterance.says === '' ? undefined : matcher?.meaningOf(utterance.says);
  return meant !== undefined && JSON.stringify(matcher?.meaningOf(text)) === JSON.stringify(meant);
}

await main(process.argv.slice(2));
