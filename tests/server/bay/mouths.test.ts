import { expect, test } from 'vitest';
import { FrameStream } from '../../../src/server/bay/frame-stream.ts';
import { mouthsOf } from '../../../src/server/bay/mouths.ts';
import { bareBay } from './bare-bay.ts';
import { partsOfABay } from './parts-of-a-bay.ts';

test('what a bay says goes to all faces by its number, with the session’s time and for whoever is asked at that moment', async () => {
  const bay = await partsOfABay();
  const stream = new FrameStream(bareBay);
  const frames: unknown[] = [];
  stream.listen(text => frames.push(JSON.parse(text)));
  const mouths = mouthsOf(stream, bay.current, bay.crew);
  expect(mouths.say('Nobody is here yet.', 'notice')).toBe(1);
  mouths.hush();
  await bay.begin();
  bay.clock().advance(250);
  expect(mouths.say('The card.', 'prompt')).toBe(3);
  const asked = bay.current.turn;
  // While its clear is asked for, the caller is asked.
  bay.stopping.stop(bay.second, '1');
  await bay.answerUntil(() => bay.key() === 'stopped.askingCause', ['all is off', 'correct']);
  await bay.say('false alarm');
  expect(bay.key()).toBe('stopped.askingCaller');
  mouths.say('Second person: was that a false alarm?', 'hazard');
  mouths.hush();
  const sessionMs = bay.current.sessionMs ?? -1;
  expect(frames).toEqual([
    {
      type: 'say',
      seq: 1,
      sessionMs: 0,
      text: 'Nobody is here yet.',
      priority: 'notice',
      addressed: 'technician',
      turn: '/0',
    },
    { type: 'hush', seq: 2, sessionMs: 0 },
    {
      type: 'say',
      seq: 3,
      sessionMs: 250,
      text: 'The card.',
      priority: 'prompt',
      addressed: 'technician',
      turn: asked,
    },
    {
      type: 'say',
      seq: 4,
      sessionMs,
      text: 'Second person: was that a false alarm?',
      priority: 'hazard',
      addressed: 'second',
      turn: bay.current.turn,
    },
    { type: 'hush', seq: 5, sessionMs },
  ]);
});

test('a bay is attended while the device that leads is there', async () => {
  const bay = await partsOfABay();
  const mouths = mouthsOf(new FrameStream(bareBay), bay.current, bay.crew);
  expect(mouths.attended()).toBe(true);
  bay.crew.left(bay.technician);
  expect(mouths.attended()).toBe(false);
});
