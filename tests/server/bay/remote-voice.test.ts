import { setImmediate } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { RemoteSpeech, RemoteVoice } from '../../../src/server/bay/remote-voice.ts';
import { VirtualClock } from '../../../src/session/virtual-clock.ts';
import { STALE_AFTER_MS } from '../../../src/voice/speech-queue.ts';

/** Faces that are asked to speak, and what they were asked for, with the session time of it. */
function faces({ attended = true } = {}) {
  const clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'));
  const asked: (readonly [atMs: number, what: string, priority?: string])[] = [];
  let frames = 10;
  const mouths = {
    say: (text: string, priority: string) => {
      asked.push([clock.nowMs(), text, priority]);
      frames += 1;
      return frames;
    },
    hush: () => void asked.push([clock.nowMs(), 'hush']),
    attended: () => attended,
  };
  const becomes: string[] = [];
  const says = (outcome: Promise<{ readonly kind: string }>) =>
    void outcome.then(({ kind }) => becomes.push(kind));
  const pass = async (ms: number) => {
    clock.advance(ms);
    for (let turn = 0; turn < 5; turn += 1) await setImmediate();
  };
  return { clock, mouths, asked, becomes, says, pass };
}

/** Ten letters: half a second, and 70 ms for each. */
const TEN = 'Oil is on.';
const USUAL_MS = 1200;

test('a sentence goes to the faces with its weight, and is over as soon as the device that leads has said it', async () => {
  const { clock, mouths, asked, becomes, says, pass } = faces();
  const speech = new RemoteSpeech(mouths, clock);
  says(speech.enqueue({ text: TEN, priority: 'prompt' }));
  says(speech.enqueue({ text: 'A remark.', priority: 'notice' }));
  await pass(0);
  expect(asked).toEqual([[0, TEN, 'prompt']]);
  await pass(300);
  for (const seq of [10, 12, 0]) speech.voice.spoken(seq);
  await pass(0);
  expect(becomes).toEqual([]);
  speech.voice.spoken(11);
  await pass(0);
  expect(becomes).toEqual(['spoken']);
  expect(asked.slice(1)).toEqual([[300, 'A remark.', 'notice']]);
  speech.voice.spoken(11);
  await pass(0);
  expect(becomes).toEqual(['spoken']);
  speech.voice.spoken(12);
  await pass(0);
  expect(becomes).toEqual(['spoken', 'spoken']);
  // Nobody is being listened to any more.
  speech.voice.spoken(12);
});

test('where no device speaks for the bay, a sentence takes as long as people need to read it', async () => {
  const { clock, mouths, becomes, says, pass } = faces({ attended: false });
  says(new RemoteSpeech(mouths, clock).enqueue({ text: TEN, priority: 'prompt' }));
  await pass(0);
  await pass(USUAL_MS - 1);
  expect(becomes).toEqual([]);
  await pass(1);
  expect(becomes).toEqual(['spoken']);
});

test('a device that speaks is waited for twice as long, and then no more', async () => {
  const { clock, mouths, becomes, says, pass } = faces();
  says(new RemoteSpeech(mouths, clock).enqueue({ text: TEN, priority: 'prompt' }));
  await pass(0);
  await pass(2 * USUAL_MS - 1);
  expect(becomes).toEqual([]);
  await pass(1);
  expect(becomes).toEqual(['spoken']);
});

test('a hazard has the faces fall silent at once, and is said twice ahead of everything else', async () => {
  const { clock, mouths, asked, becomes, says, pass } = faces();
  const speech = new RemoteSpeech(mouths, clock);
  says(speech.enqueue({ text: TEN, priority: 'prompt' }));
  await pass(0);
  says(speech.enqueue({ text: 'Danger.', priority: 'hazard' }));
  await pass(0);
  expect(becomes).toEqual(['cut']);
  expect(asked.slice(1)).toEqual([
    [0, 'hush'],
    [0, 'Danger.', 'hazard'],
  ]);
  speech.voice.spoken(12);
  await pass(0);
  speech.voice.spoken(13);
  await pass(0);
  expect(asked.slice(3)).toEqual([[0, 'Danger.', 'hazard']]);
  expect(becomes).toEqual(['cut', 'spoken']);
});

test('a remark that had to wait until it was old news is not said', async () => {
  const { clock, mouths, asked, becomes, says, pass } = faces();
  const speech = new RemoteSpeech(mouths, clock);
  says(speech.enqueue({ text: TEN.repeat(20), priority: 'prompt' }));
  says(speech.enqueue({ text: 'A remark.', priority: 'notice' }));
  await pass(0);
  await pass(STALE_AFTER_MS + 1);
  speech.voice.spoken(11);
  await pass(0);
  expect(becomes).toEqual(['spoken', 'stale']);
  expect(asked).toHaveLength(1);
});

test('faces that say nothing are not hushed; at its end those that do are, and nobody waits for them', async () => {
  const { clock, mouths, asked, says, becomes, pass } = faces();
  const voice = new RemoteVoice(mouths, clock);
  expect(voice.description).toBe('the paired devices');
  voice.cut();
  await voice.close();
  expect(asked).toEqual([]);
  const sound = await voice.synthesize(TEN);
  // It is said by the faces: nothing of it sounds here.
  expect(sound.samples).toHaveLength(0);
  says(voice.play(sound).then(() => ({ kind: 'over' })));
  await voice.close();
  await pass(0);
  expect(asked).toEqual([
    [0, TEN, 'prompt'],
    [0, 'hush'],
  ]);
  expect(becomes).toEqual(['over']);
  voice.cut();
  expect(asked).toHaveLength(2);
});

test('what a session that is left had still to say is not said into the next one', async () => {
  const { clock, mouths, asked, becomes, says, pass } = faces();
  const speech = new RemoteSpeech(mouths, clock);
  says(speech.enqueue({ text: TEN, priority: 'hazard' }));
  await pass(0);
  const closed = speech.close();
  says(speech.enqueue({ text: 'Key off.', priority: 'hazard' }));
  await closed;
  await pass(60_000);
  expect(asked).toEqual([
    [0, TEN, 'hazard'],
    [0, 'hush'],
  ]);
  expect(becomes.toSorted()).toEqual(['cut', 'cut']);
});
