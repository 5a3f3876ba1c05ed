import { expect, it } from 'vitest';
import { languages } from '../../prompts/index.ts';
import { type RecordLog, readLog } from '../../src/record/index.ts';
import { gather } from '../../src/report/gather.ts';
import { summarize } from '../../src/report/summarize.ts';
import { Session } from '../../src/session/session.ts';
import { meansStop } from '../../src/session/stop-words.ts';
import { goodReply, rig, rigAround } from '../helpers/session-rig.ts';

/** A session whose disk takes nothing until it is let. */
async function onSlowDisk() {
  const base = await rig();
  const waiting: (() => void)[] = [];
  let slow = true;
  const record: RecordLog = new Proxy(base.record, {
    get(target, name) {
      if (name !== 'append') {
        const value: unknown = Reflect.get(target, name, target);
        return typeof value === 'function' ? value.bind(target) : value;
      }
      // Sealed in the order of the calls, as the real one does; only the disk is slow.
      return (...args: Parameters<RecordLog['append']>) => {
        const appended = target.append(...args);
        return slow ? new Promise<void>(resolve => waiting.push(resolve)).then(() => appended) : appended;
      };
    },
  });
  const session = new Session({ ...base.session.parts, record });
  const run = rigAround(session, base.clock, record, base.path);
  const release = () => {
    slow = false;
    for (const go of waiting.splice(0)) go();
  };
  return { run, session, release };
}

const isConfirmed = async (path: string) => summarize(await gather(path)).trust.replayFault === undefined;

it('a stop counts and is called out before the disk has anything of it, whatever else the disk has not taken', async () => {
  const { run, session, release } = await onSlowDisk();
  const begun = session.begin();
  run.keys.type('card is right');
  const before = run.said.length;
  session.receive({ type: 'stop' }, 'second', 'touch');
  expect(run.key()).toBe('stopped.makingSafe');
  expect(run.said.slice(before).join(' ')).toMatch(/Stop/);
  release();
  await begun;
  await session.settled();
  expect(run.key()).toBe('stopped.makingSafe');
  await run.record.close();
  expect(await isConfirmed(run.path)).toBe(true);
});

it('a stop that comes before the session is begun stands when it is', async () => {
  const run = await rig();
  run.session.receive({ type: 'stop' }, 'second', 'touch');
  expect(run.key()).toBe('stopped.makingSafe');
  await run.session.begin();
  expect(run.key()).toBe('stopped.makingSafe');
  await run.record.close();
  expect(await isConfirmed(run.path)).toBe(true);
});

it('what waited for the disk when a stop came is not asked any more, and what waited in the queue answers nothing', async () => {
  const { run, session, release } = await onSlowDisk();
  const begun = session.begin();
  session.receive({ type: 'reply', id: 'cardRight' }, 'technician', 'keys');
  session.receive({ type: 'reply', id: 'allOff' }, 'technician', 'keys');
  const before = run.said.length;
  session.receive({ type: 'stop' }, 'technician', 'keys');
  release();
  await begun;
  await session.settled();
  expect(run.key()).toBe('stopped.makingSafe');
  const makerFirst = run.said.slice(before).filter(said => said.includes('maker'));
  expect(makerFirst).toEqual([]);
});

it('a stop that comes while an event is being noted stands behind it on the record, which is confirmed', async () => {
  const run = await rig();
  await run.session.begin();
  let stopped = false;
  run.session.watch(happening => {
    // A reading that is passed is noted twice: its verdict, and that the step is done.
    if (stopped || happening?.kind !== 'noted' || happening.note.kind !== 'verdict') return;
    stopped = true;
    run.session.receive({ type: 'stop' }, 'second', 'bus');
  });
  for (let turn = 0; turn < 100 && !stopped; turn += 1) {
    const reply = goodReply(run);
    if (reply === null) await run.pass(1000);
    else await run.type(reply);
  }
  await run.session.settled();
  expect(run.key()).toBe('stopped.makingSafe');
  const { entries } = await readLog(run.path);
  const last = entries.findLastIndex(entry => entry.kind === 'event' && entry.data.type === 'stop');
  expect(entries[last - 1]?.kind).toBe('passed');
  await run.record.close();
  expect(await isConfirmed(run.path)).toBe(true);
});

it.each([
  ['Stop!', true],
  ['please stop', true],
  ['STOP  now', true],
  ['unstoppable', false],
  ['the start stopper is in', false],
  ['', false],
])('%j means stop in English: %s', (text, means) => {
  expect(meansStop(text, languages.en)).toBe(means);
});
