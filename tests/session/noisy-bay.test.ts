import { describe, expect, it } from 'vitest';
import { readLog } from '../../src/record/index.ts';
import { createTypedRecognizer } from '../../src/voice/recognizers/typed.ts';
import { rig } from '../helpers/session-rig.ts';

/** A session with an ear, and utterances that stand so far above the noise as is given. */
async function sessionIn(aboveNoiseDb: number) {
  const run = await rig();
  const voice = createTypedRecognizer();
  run.session.attach(voice, 'voice');
  await run.session.begin();
  let nth = 0;
  const measure = async (above: number) => {
    for (let i = 0; i < 3; i++) {
      nth += 1;
      run.session.level({
        levelDbfs: -30,
        clipping: false,
        speech: false,
        noiseDbfs: -40,
        utterance: { nth, speechDbfs: -30, aboveNoiseDb: above },
      });
    }
    // Whatever is being said about it is said to its end.
    await run.pass(20_000);
  };
  await measure(aboveNoiseDb);
  const say = async (text: string) => {
    voice.type(text);
    await run.session.settled();
  };
  return { run, measure, say };
}

describe('a session in a bay that is too noisy', () => {
  it('takes no reply by voice, says so, and still hears the stop word', async () => {
    const { run, say } = await sessionIn(2);
    expect(run.said.join(' ')).toContain('Too noisy here for voice');
    const before = run.key();
    await say('card is right');
    expect(run.key()).toBe(before);
    await say('stop');
    expect(run.key()).toBe('stopped.makingSafe');
  });

  it('goes on by keys, and by voice once it is quieter', async () => {
    const { run, measure, say } = await sessionIn(2);
    const first = run.key();
    await run.type('card is right');
    const second = run.key();
    expect(second).not.toBe(first);
    await measure(20);
    await say('understood');
    expect(run.key()).not.toBe(second);
  });
});

it('a quiet bay is put on the record and not talked about', async () => {
  const { run } = await sessionIn(25);
  const { entries } = await readLog(run.path);
  const found = entries.filter(({ kind }) => kind === 'hearing').map(({ data }) => data);
  expect(found).toEqual([{ finding: 'bayChecked', noiseDbfs: -40, aboveNoiseDb: 25 }]);
  expect(run.said.join(' ')).not.toContain('voice');
});
