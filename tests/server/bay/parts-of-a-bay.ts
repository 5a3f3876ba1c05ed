import { randomUUID } from 'node:crypto';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { onTestFinished, vi } from 'vitest';
import { stateName } from '../../../machines/moment.ts';
import { type RecordLog, readLog } from '../../../src/record/index.ts';
import { readRecorded } from '../../../src/record/vocabulary/index.ts';
import { Commands } from '../../../src/server/bay/commands/commands.ts';
import { DoneCommands } from '../../../src/server/bay/commands/done-commands.ts';
import { Crew } from '../../../src/server/bay/crew.ts';
import { CurrentRun } from '../../../src/server/bay/current-run.ts';
import { Opening } from '../../../src/server/bay/opening.ts';
import { Run } from '../../../src/server/bay/run.ts';
import type { Resumed } from '../../../src/server/bay/starter.ts';
import { Stopping } from '../../../src/server/bay/stopping.ts';
import { type Pairing, Pairings } from '../../../src/server/pairing/pairings.ts';
import type { Deed, Role } from '../../../src/server/protocol/index.ts';
import { Refused } from '../../../src/server/refused.ts';
import { demoJob } from '../../../src/session/demo-job.ts';
import { VirtualClock } from '../../../src/session/virtual-clock.ts';
import { demoSix } from '../../machines/helpers/profiles.ts';

const header = { profile: demoSix, job: demoJob, language: 'en', units: 'us' } as const;
const mouths = { say: () => 0, hush: () => 0, attended: () => false };
const BEGIN = new Date('2026-01-02T03:04:05Z');
const news = { rescued: async () => {}, lost: () => {}, closed: () => {} };

/** A disk that takes nothing until it is let; what it is given is sealed in the order of the calls all the same. */
export function slowDisk(record: RecordLog): { release(): void } {
  const append = record.append.bind(record);
  const waiting: (() => void)[] = [];
  let slow = true;
  vi.spyOn(record, 'append').mockImplementation(async (...entry) => {
    const appended = append(...entry);
    if (slow) await new Promise<void>(resolve => waiting.push(resolve));
    return appended;
  });
  const release = () => {
    slow = false;
    for (const go of waiting.splice(0)) go();
  };
  // A test that fails in between leaves nobody waiting.
  onTestFinished(release);
  return { release };
}

/** Everything that waits for nothing but its turn has had it. */
export async function allElse(): Promise<void> {
  for (let turn = 0; turn < 10; turn += 1) await setImmediate();
}

/** What became of it without waiting for the disk; else that it is under way. */
export const atOnce = (asked: Promise<string>): Promise<string> =>
  Promise.race([asked, allElse().then(() => 'under way')]);

/** What a refusal is coded as, or whether it had been done before. */
export const outcomeOf = (asked: Promise<boolean>): Promise<string> =>
  asked.then(
    again => (again ? 'again' : 'done'),
    error => (error instanceof Refused ? error.code : String(error)),
  );

const recordedIn = async ({ record }: Run) => readRecorded((await readLog(record.path)).entries).entries;

/** The parts of a bay, on real records, with nobody connected over a line: whose sessions are begun when they are let. */
export async function partsOfABay() {
  const folder = await mkdtemp(join(tmpdir(), 'bay-'));
  let clock = new VirtualClock(BEGIN);
  const clockFrom = () => {
    clock = new VirtualClock(BEGIN);
    return clock;
  };
  const pairings = await Pairings.open(join(folder, 'pairings.json'), () => 0);
  const paired = async (role: Role, bay = 'bay'): Promise<Pairing> => {
    const added = await pairings.add(bay, role, `the ${role}`);
    if (!added) throw new Error('The bay is full.');
    return added.pairing;
  };
  const [technician, second, supervisor] = [
    await paired('technician'),
    await paired('second'),
    await paired('supervisor'),
  ];
  const crew = new Crew('bay', pairings);
  for (const device of [technician, second, supervisor]) crew.came(device);

  const place = () => {
    const id = randomUUID();
    return { id, path: join(folder, `${id}.jsonl`) };
  };
  /** The next sessions are begun when this has settled. */
  let gate: Promise<void> = Promise.resolve();
  /** The record of the session that broke off when the server ended. */
  let brokeOff: string | null = null;
  let made: Run | null = null;
  const goOn = async (path: string): Promise<Resumed> => {
    await gate;
    const resumed = await Run.resume({ id: 'gone on with', path }, clockFrom, mouths, news);
    made = resumed.run;
    return resumed;
  };
  const left: string[] = [];
  const lost: string[] = [];
  const safe: string[] = [];
  const starter = {
    start: async () => {
      await gate;
      made = await Run.start(place(), header, clockFrom, mouths, news);
      return made;
    },
    goOn: (_bay: string, path: string) => goOn(path),
    resume: async () => (brokeOff === null ? null : goOn(brokeOff)),
    brokeOff: () => brokeOff,
    isLost: async (_bay: string, id: string) => {
      lost.push(id);
    },
    madeSafe: async (_bay: string, by: string) => {
      safe.push(by);
    },
    leave: async (bay: string) => {
      left.push(bay);
    },
  };

  const done = new DoneCommands();
  const shown: string[] = [];
  let toldSoon = 0;
  const current = new CurrentRun(run => run.session.watch(() => stopping.look(run.session.moment)));
  const showNow = () => {
    shown.push(current.run ? stateName(current.run.session.moment) : 'no session');
  };
  const isBeginning = () => opening.isUnderWay;
  const stopping: Stopping = new Stopping({ current, crew, done, isBeginning, showNow });
  const opening = new Opening({ bay: 'bay', starter, mouths, current, done, stopping, showNow });
  const commands = new Commands({
    bay: 'bay',
    pairings,
    crew,
    current,
    opening,
    stopping,
    shown: {
      show: () => {
        toldSoon += 1;
      },
    },
    done,
  });
  onTestFinished(async () => {
    await current.run?.close();
  });

  const perform = (by: Pairing, deed: Deed, id: string = randomUUID()) =>
    outcomeOf(commands.perform(by, { type: 'command', id, deed }));
  const say = (
    text: string,
    { by = technician, turn = current.turn, id = randomUUID() as string } = {},
  ): Promise<string> => perform(by, { do: 'say', turn, text, via: 'touch' }, id);
  const running = () => {
    if (!current.run) throw new Error('No session has begun.');
    return current.run;
  };
  return {
    technician,
    second,
    supervisor,
    paired,
    pairings,
    crew,
    current,
    stopping,
    opening,
    commands,
    done,
    /** The clock of the session that began last. */
    clock: () => clock,
    /** The states that all faces were told of at once. */
    shown,
    /** How often faces were to be told of what a command has changed. */
    toldSoon: () => toldSoon,
    perform,
    /** Says something to the question that is asked now, or was at this turn. */
    say,
    /** Answers by the first of these that may be said, until it is so. */
    async answerUntil(isSo: () => boolean, answers: readonly string[]): Promise<void> {
      for (let turn = 0; turn < 12 && !isSo(); turn += 1) {
        const offered = running()
          .session.grammar('keys')
          .replies.flatMap(({ wordings }) => wordings);
        const answer = answers.find(each => offered.includes(each));
        if (answer === undefined) throw new Error(`None of these is offered: ${offered.join(', ')}`);
        await say(answer);
      }
    },
    begin: () => perform(technician, { do: 'begin' }),
    /** The sessions that are begun from now on are begun when this settles. */
    holdUp: (until: Promise<void>) => {
      gate = until;
    },
    /** The server ended while this record was written. */
    brokeOff: (path: string) => {
      brokeOff = path;
    },
    /** The session that was made last, whether it came to be seen or not. */
    made: () => made,
    /** The bays that a restart would find no session of. */
    left,
    /** The sessions that a restart would find lost, and who said that their engines are off. */
    lost,
    safe,
    run: running,
    key: () => stateName(running().session.moment),
    /** The commands that stand on the record of this session, in their order. */
    commandsOn: async (run: Run) =>
      (await recordedIn(run)).flatMap(entry => (entry.kind === 'command' ? [entry.data.do] : [])),
    /** What help was called for that nothing followed from, as the record of this session has it. */
    notBelievedOn: async (run: Run) =>
      (await recordedIn(run)).flatMap(entry => (entry.kind === 'notCarriedOut' ? [entry.data.cause] : [])),
  };
}

/** Opens what waits for it. */
export function latch(): { readonly opened: Promise<void>; open(): void } {
  let open = () => {};
  const opened = new Promise<void>(resolve => {
    open = resolve;
  });
  return { opened, open };
}
