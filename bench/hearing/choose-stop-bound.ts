import { english } from '../../prompts/en/index.ts';
import { stepMs } from '../../src/voice/ear/sound.ts';
import { createStopSpotter, leastEarlyStopPerPhone } from '../../src/voice/ear/stop-spotter.ts';
import { pronounceEnglish } from '../../src/voice/languages/pronunciations/english.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import { quantile } from '../voice-measure.ts';
import type { Level } from './accuracy.ts';
import { clipScenes, spokenClip } from './people/clip-scenes.ts';
import { clipsOf, notMeasured, peopleFolders } from './people/folders.ts';
import { preparePeople } from './people/prepare.ts';
import { stopsOf } from './people/stops.ts';
import { remember } from './remembered.ts';
import type { Scene } from './scene.ts';

const usage =
  'npm run hearing:stop-bound -- --people <folder> ...: hears people of the development set, and prints what each bound of the stop spotter would miss and take';

const bounds = [-0.1, -0.2, -0.3, -0.4, -0.5, -0.6, -0.8, -1, -1.3, -1.6, -2];
const clipsOfEach = 100;
/** A stop counts as heard from its beginning to so long after its end. */
const withinMs = 500;
/** Nobody says stop for longer than this. */
const longestStopMs = 1_200;

/** When the spotter alone reports, on the time line of a scene, with this bound in the early outputs. */
function stopsIn(
  { samples }: Scene,
  leastEarlyPerPhone: number,
): readonly { readonly atMs: number; readonly text: string }[] {
  const spotter = createStopSpotter(pronounceEnglish, { leastEarlyPerPhone });
  spotter.listen(english.stopWordings);
  return remember(samples).flatMap((moments, step) =>
    moments.flatMap(moment => {
      const text = spotter.next(moment);
      return text === undefined ? [] : [{ atMs: (step + 1) * stepMs, text }];
    }),
  );
}

function tryOnStops(of: string, scenes: readonly Scene[]): void {
  const said = scenes.flatMap(({ utterances }) => utterances).length;
  for (const bound of bounds) {
    const lateMs: number[] = [];
    const missed: string[] = [];
    for (const scene of scenes) {
      const stops = stopsIn(scene, bound);
      for (const { speechEndMs, speaker = '' } of scene.utterances) {
        const found = stops.find(
          ({ atMs }) => atMs >= speechEndMs - longestStopMs && atMs <= speechEndMs + withinMs,
        );
        if (found) lateMs.push(found.atMs - speechEndMs);
        else missed.push(speaker);
      }
    }
    const percent = ((100 * lateMs.length) / said).toFixed(1);
    console.log(
      `  ${of} ${bound}: ${percent} % of ${said}, late ${quantile(lateMs, 0.5).toFixed(0)} / ${quantile(lateMs, 0.95).toFixed(0)} ms${bound === leastEarlyStopPerPhone ? `, missed ${missed.join(' ')}` : ''}`,
    );
  }
}

function tryOnTalk(of: string, scenes: readonly Scene[]): void {
  const minutes = scenes.reduce((sum, { samples }) => sum + samples.length, 0) / speechRateHz / 60;
  for (const bound of bounds) {
    const found = scenes.flatMap(scene =>
      stopsIn(scene, bound).map(({ atMs, text }) => {
        const at = (atMs / 1000) * speechRateHz;
        const within = scene.utterances.find(({ toSample }) => toSample >= at);
        return `${text} < ${within?.says.slice(0, 60)}`;
      }),
    );
    console.log(
      `  ${of} ${bound}: ${found.length} in ${minutes.toFixed(1)} min, ${((10 * found.length) / minutes).toFixed(2)} in 10 min${bound >= -0.6 && bound <= -0.3 ? ` ${found.join(' | ')}` : ''}`,
    );
  }
}

async function main(args: readonly string[]): Promise<void> {
  const { folders, rest } = peopleFolders(args);
  if (rest.length > 0 || folders.length === 0) {
    console.log(folders.length === 0 ? notMeasured : usage);
    return;
  }
  const people = await preparePeople(clipsOf(folders), 'dev');
  const { alone, 'in talk': within } = stopsOf(people, clipsOfEach);
  const { loops } = people;
  // The same half of the talk that the certainty of replies is chosen on.
  const talk = people.material.talk.filter((_, i) => i % 2 === 0).map(spokenClip);
  for (const level of ['clean', 10, 0] satisfies Level[]) {
    tryOnStops(`alone, ${level}`, clipScenes(alone, level, loops));
    tryOnStops(`in talk, ${level}`, clipScenes(within, level, loops));
  }
  for (const level of ['clean', 10] satisfies Level[]) {
    tryOnTalk(`talk, ${level}`, clipScenes(talk, level, loops));
  }
}

await main(process.argv.slice(2));
