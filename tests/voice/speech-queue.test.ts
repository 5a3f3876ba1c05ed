import { describe, expect, it } from 'vitest';
import { VoiceError } from '../../src/voice/errors.ts';
import type { Pcm } from '../../src/voice/ports.ts';
import {
  type Sentence,
  type SpeechOutcome,
  SpeechQueue,
  STALE_AFTER_MS,
} from '../../src/voice/speech-queue.ts';
import { ScriptedSink } from '../helpers/scripted-sink.ts';
import { tone } from '../helpers/tones.ts';

/** Lets everything happen that can happen without the sink. */
const settle = () => new Promise(resolve => setImmediate(resolve));

function setUp(synthesize: (text: string) => Promise<Pcm> = async () => tone(0.1)) {
  const sink = new ScriptedSink();
  const time = { ms: 0 };
  const queue = new SpeechQueue({ synthesize }, sink, () => time.ms);
  const say = (priority: Sentence['priority'], text: string) => queue.enqueue({ priority, text });
  const finish = async () => {
    await settle();
    sink.finish();
    await settle();
  };
  return { sink, queue, time, say, finish };
}

describe('the speech queue', () => {
  it('says prompts before notices, each in the order it came', async () => {
    const { sink, say, finish } = setUp();
    for (const text of ['first', 'second']) void say('notice', text);
    for (const text of ['ask', 'ask more']) void say('prompt', text);
    for (let i = 0; i < 4; i++) await finish();
    expect(sink.script).toEqual(['first', 'ask', 'ask more', 'second']);
  });

  it('lets a hazard cut what is being said, says it twice, then goes on', async () => {
    const { sink, say, finish } = setUp();
    const cut = say('prompt', 'Is the coolant full?');
    const next = say('notice', 'Coolant is next.');
    await settle();
    const hazard = say('hazard', 'Danger. Stop the engine.');
    for (let i = 0; i < 3; i++) await finish();
    expect(sink.script).toEqual([
      'Is the coolant full? (cut)',
      'Danger. Stop the engine.',
      'Danger. Stop the engine.',
      'Coolant is next.',
    ]);
    expect(await cut).toEqual({ kind: 'cut' });
    expect([await hazard, await next]).toEqual([{ kind: 'spoken' }, { kind: 'spoken' }]);
  });

  it('never lets a hazard cut another', async () => {
    const { sink, say, finish } = setUp();
    void say('hazard', 'Fire.');
    await settle();
    void say('hazard', 'Oil pressure lost.');
    for (let i = 0; i < 4; i++) await finish();
    expect(sink.script).toEqual(['Fire.', 'Fire.', 'Oil pressure lost.', 'Oil pressure lost.']);
  });

  it('does not say a hazard anew that is waiting or being said', async () => {
    const { sink, say, finish } = setUp();
    const outcomes = [say('hazard', 'Fire.'), say('hazard', 'Fire.')];
    await finish();
    outcomes.push(say('hazard', 'Fire.'));
    await finish();
    expect(await Promise.all(outcomes)).toEqual(Array(3).fill({ kind: 'spoken' }));
    expect(sink.script).toEqual(['Fire.', 'Fire.']);
    void say('hazard', 'Fire.');
    await settle();
    expect(sink.played.length).toBe(3);
  });

  it('does not keep a hazard waiting for the sound of a prompt to be made', async () => {
    const { sink, say } = setUp(text =>
      text === 'slow' ? new Promise(() => undefined) : Promise.resolve(tone(0.1)),
    );
    const slow = say('prompt', 'slow');
    await settle();
    void say('hazard', 'Fire.');
    await settle();
    expect(sink.script).toEqual(['Fire. (playing)']);
    expect(await slow).toEqual({ kind: 'cut' });
  });

  it.each([
    [STALE_AFTER_MS, 'spoken'],
    [STALE_AFTER_MS + 1, 'stale'],
  ])('a notice that waited %i ms is %s, a prompt always spoken', async (waitedMs, kind) => {
    const { time, say, finish } = setUp();
    void say('prompt', 'long');
    const notice = say('notice', 'news');
    const prompt = say('prompt', 'ask');
    await settle();
    time.ms = waitedMs;
    for (let i = 0; i < 3; i++) await finish();
    expect([(await notice).kind, (await prompt).kind]).toEqual([kind, 'spoken']);
  });

  it('when cleared drops what waits and cuts what is said, but no hazard', async () => {
    const { sink, queue, say, finish } = setUp();
    const dropped = [say('prompt', 'a'), say('prompt', 'b'), say('notice', 'c')];
    await settle();
    queue.clear();
    expect(await Promise.all(dropped)).toEqual(Array(3).fill({ kind: 'cut' }));
    const hazard = say('hazard', 'Fire.');
    await settle();
    queue.clear();
    await finish();
    await finish();
    expect(await hazard).toEqual({ kind: 'spoken' });
    expect(sink.script).toEqual(['a (cut)', 'Fire.', 'Fire.']);
  });

  it('when closed ends everything, a hazard too, and closes the sink', async () => {
    const { sink, queue, say } = setUp();
    const outcomes = [say('hazard', 'Fire.'), say('prompt', 'a')];
    await settle();
    await queue.close();
    expect(await Promise.all(outcomes)).toEqual([{ kind: 'cut' }, { kind: 'cut' }]);
    expect([sink.script, sink.closed]).toEqual([['Fire. (cut)'], true]);
  });

  it('goes on after a sentence that cannot be made or played, and says why', async () => {
    const { sink, say, finish } = setUp(async text => {
      if (text === 'unspeakable') throw new VoiceError('speechUnusable', 'That cannot be spoken.');
      return tone(0.1);
    });
    const outcomes: Promise<SpeechOutcome>[] = ['unspeakable', 'unplayable', 'fine'].map(text =>
      say('prompt', text),
    );
    await settle();
    sink.fail();
    await finish();
    expect(await Promise.all(outcomes)).toEqual([
      { kind: 'failed', reason: 'That cannot be spoken.' },
      { kind: 'failed', reason: 'The loudspeaker failed.' },
      { kind: 'spoken' },
    ]);
  });

  it.each([
    ['spoken when one of its two playings fails', 1, { kind: 'spoken' }],
    ['failed when both do', 2, { kind: 'failed', reason: 'The loudspeaker failed.' }],
  ])('calls a hazard %s', async (_title, failures, outcome) => {
    const { sink, say, finish } = setUp();
    const hazard = say('hazard', 'Fire.');
    for (let i = 0; i < failures; i++) {
      await settle();
      sink.fail();
    }
    await finish();
    expect(await hazard).toEqual(outcome);
  });

  it('tells when speech begins and ends, so that the ear can be narrowed meanwhile', async () => {
    const { sink, queue, say, finish } = setUp();
    const told: string[] = [];
    queue.onSpeaking(sentence => told.push(sentence ? `+${sentence.text}` : '-'));
    sink.onPlay = label => told.push(label);
    void say('prompt', 'a');
    void say('hazard', 'Fire.');
    await finish();
    await finish();
    expect(told).toEqual(['+Fire.', 'Fire.', 'Fire.', '-']);
  });

  it('names a sound by its label, or by its text', async () => {
    const { sink, queue, finish } = setUp();
    void queue.enqueue({ text: 'Go on?', priority: 'prompt', label: 'fill.ask' });
    await finish();
    expect(sink.script).toEqual(['fill.ask']);
  });
});
