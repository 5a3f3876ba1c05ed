import { aloneScenes } from './alone.ts';
import { grammarAt, speakerSets, startReplies } from './material.ts';
import { clipsOf } from './people/folders.ts';
import { listenerRemembering } from './remembered.ts';
import { acceptedBy, measureNoise } from './talk-hours.ts';

const replies = await startReplies();
for (const kind of ['radio', 'babble'] as const)
  for (const seed of [1, 12, 23]) {
    const r = await measureNoise(
      [kind],
      200,
      replies,
      { ...speakerSets.development, seed },
      listenerRemembering,
    );
    console.log(kind, seed, JSON.stringify(r));
  }
const clips = clipsOf(process.env.FIRST_FIRE_PEOPLE!.split(':')).filter(({ split }) => split === 'dev');
const scenes = (await aloneScenes(clips, 200))['radio of people alone']!().map(s => ({
  ...s,
  utterances: s.utterances.map((u, i) => ({ ...u, grammar: grammarAt(replies, i * 5) })),
}));
console.log('radio of people', JSON.stringify(await acceptedBy(scenes, listenerRemembering)));
