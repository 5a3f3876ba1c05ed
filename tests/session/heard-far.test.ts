import { describe, expect, it } from 'vitest';
import { languages } from '../../prompts/index.ts';
import { readLog } from '../../src/record/index.ts';
import type { Heard } from '../../src/voice/ports.ts';
import { goUntil, type Rig, rig } from '../helpers/session-rig.ts';

const comeNearer = languages.en.lines.heardFar;
const far: Heard = { kind: 'unclear', text: 'card is right', reason: 'farAway' };
const told = ({ said }: Rig) => said.filter(sentence => sentence === comeNearer).length;

describe('a reply from somebody who is hardly near', () => {
  it('is no answer and nothing misunderstood: they are told to come nearer, once for a question', async () => {
    const run = await rig();
    await run.session.begin();
    for (let times = 0; times < 5; times += 1) {
      run.session.hear(far, 'voice');
      await run.pass(30_000);
    }
    expect(told(run)).toBe(1);
    expect(run.key()).toBe('job.card.asking');
    expect(run.session.moment.context.misheard).toBe(0);
    const { entries } = await readLog(run.path);
    expect(entries.filter(({ kind }) => kind === 'event')).toEqual([]);
    expect(entries.filter(({ kind }) => kind === 'heard')[0]?.data).toMatchObject({ reason: 'farAway' });
  });

  it('is told so at the next question not sooner than twenty seconds later', async () => {
    const run = await rig();
    await run.session.begin();
    run.session.hear(far, 'voice');
    await run.type('card is right');
    await run.pass(10_000);
    run.session.hear(far, 'voice');
    expect(told(run)).toBe(1);
    await run.pass(10_000);
    run.session.hear(far, 'voice');
    expect(told(run)).toBe(2);
  });

  it('is told nothing where seconds count', async () => {
    const run = await rig();
    await run.session.begin();
    await goUntil(run, 'firstFire.crank.cranking');
    run.session.hear(far, 'voice');
    await run.session.settled();
    expect(told(run)).toBe(0);
  });
});
