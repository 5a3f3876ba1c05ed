import { isOver, type Moment, outcomeOf, stateName } from '../../../machines/moment.ts';
import type { Emergency } from '../../../machines/vocabulary.ts';
import { languages } from '../../../prompts/index.ts';
import type { RecordLog } from '../../record/index.ts';
import { type Clock, recordClock, SystemClock } from '../../session/clock.ts';
import { firingOf, joinEngineEar } from '../../session/engine-ear/join-engine-ear.ts';
import { headerData, type SessionHeader } from '../../session/header.ts';
import { callerAtShared } from '../../session/hearing.ts';
import { closeAfterAll, type Restored, restore, resumedData } from '../../session/resume.ts';
import { Session } from '../../session/session.ts';
import { meansStop } from '../../session/stop-words.ts';
import { Viewer } from '../../session/viewer.ts';
import { joinVoices } from '../../session/who-speaks/join-voices.ts';
import { createTypedRecognizer } from '../../voice/recognizers/typed.ts';
import type { Devices } from '../devices.ts';
import { DeafHere } from '../face/deaf.ts';
import { emergenciesIn } from '../face/emergencies.ts';
import type { Face, FaceState } from '../face/face.ts';
import { PlotBook } from '../face/plots.ts';
import { Watchers } from '../face/watchers.ts';
import { type KeptRecord, noteOn } from '../record/data-base.ts';
import { beginRecord, reopenRecord } from '../record/log-in-browser.ts';
import type { Choice } from './choice.ts';

/** A session that runs in this page. */
export interface LocalSession extends Face {
  readonly id: string;
  /** Leaves it; a session that is not over can be gone on with. */
  close(): Promise<void>;
}

const KEYS = 'keys';

/**
 * Begins a session in this page.
 * @throws RecordError when its record cannot be kept
 */
export async function beginLocal(
  dataBase: IDBDatabase,
  { profile, job, units, language }: Choice,
  devices: Devices,
): Promise<LocalSession> {
  const header: SessionHeader = { profile, job, language, units };
  const clock = new SystemClock();
  const startedAt = clock.wall().toISOString();
  const about: KeptRecord = {
    id: `first-fire-${startedAt.slice(0, 19).replaceAll(':', '-')}`,
    startedAt,
    vehicle: job.vehicle,
    profile: profile.name,
    state: 'open',
    sent: false,
  };
  const record = await beginRecord(dataBase, about, headerData(header), recordClock(clock));
  return run({ dataBase, id: about.id, header, clock, record, devices });
}

/**
 * Goes on with a session after the page was closed, reloaded or lost its power.
 * @throws RecordError or ResumeError when it cannot be gone on with, each one sentence
 */
export async function resumeLocal(
  dataBase: IDBDatabase,
  id: string,
  devices: Devices,
): Promise<LocalSession> {
  const { log, going } = await reopenRecord(dataBase, id, entries => {
    const restored = restore(entries, id);
    const session = new SystemClock(restored.lastMs);
    return { restored, session, clock: recordClock(session), data: resumedData() };
  });
  const { restored, session: clock } = going;
  try {
    // What the laptop may have is only its beginning from now on.
    await noteOn(dataBase, id, { sent: false, copyOf: null });
    if (isOver(restored.moment)) {
      await noteOn(dataBase, id, { state: outcomeOf(restored.moment) });
      throw await closeAfterAll(log, restored.moment, id);
    }
    return await run({ dataBase, id, header: restored.header, clock, record: log, devices, restored });
  } catch (error) {
    await log.close();
    throw error;
  }
}

/** Names the questions of a session: another name as soon as another thing is asked, or waits for its read-back. */
class Turns {
  #asked = '';
  #pending: unknown;
  #number = 0;

  at(moment: Moment): string {
    const asked = stateName(moment);
    if (asked !== this.#asked || moment.context.pending !== this.#pending) this.#number += 1;
    this.#asked = asked;
    this.#pending = moment.context.pending;
    return String(this.#number);
  }
}

interface Parts {
  readonly dataBase: IDBDatabase;
  readonly id: string;
  readonly header: SessionHeader;
  readonly clock: Clock;
  readonly record: RecordLog;
  readonly devices: Devices;
  readonly restored?: Restored;
}

/** Joins the session with this device. */
async function run({ dataBase, id, header, clock, record, devices, restored }: Parts): Promise<LocalSession> {
  const speaking = await devices.speaking(clock, header.language);
  const { speech } = speaking;
  const language = languages[header.language];
  const session = new Session(
    { ...header, language, clock, record, speech },
    restored?.moment,
    restored?.leftAt,
  );
  const viewer = new Viewer(session, KEYS, speaking.silent);
  const plots = new PlotBook(language, header.units);
  for (const { atMs, data } of restored?.verdicts ?? []) plots.take(data, atMs);
  viewer.recall(restored?.verdicts.map(({ data }) => data) ?? []);
  const typed = createTypedRecognizer();
  const touched = createTypedRecognizer();
  session.attach(typed, 'keys');
  session.attach(touched, 'touch');
  session.watch(happening => {
    if (happening?.kind === 'noted' && happening.note.kind === 'verdict')
      plots.take(happening.note.data, happening.atMs);
  });

  const watchers = new Watchers();
  const turns = new Turns();
  let state: FaceState | null = null;
  let stop: FaceState['stop'] = 'none';
  const changed = () => {
    state = null;
    watchers.changed();
  };
  viewer.watch(changed);
  const deaf = new DeafHere(changed);
  const endWatch = devices.watchAsleep(isAsleep => deaf.sleeps(isAsleep));
  const look = (): FaceState => ({
    role: 'technician',
    view: viewer.view(),
    turn: turns.at(session.moment),
    stop,
    deaf: deaf.state,
    takenAtMs: performance.now(),
    plots: plots.plots(),
    emergencies: emergenciesIn(language),
    bay: null,
  });

  await session.begin();
  if (speaking.remark !== undefined) session.report(speaking.remark);
  // Another tab may have sent its beginning meanwhile.
  void session.outcome.then(outcome => noteOn(dataBase, id, { state: outcome, sent: false }));
  const engineEar = joinEngineEar(session, () => viewer.showsEngineEar(engineEar));
  const voices = joinVoices(session);
  const hearing = devices.hearing(header.language, {
    attach(recognizer) {
      session.attach(recognizer, 'voice');
      recognizer.onVoice?.(heard => voices.hears(heard));
    },
    listensWith: source => viewer.listensWith(source),
    level: level => {
      viewer.level(level);
      session.level(level);
    },
    noSound: isMissing => deaf.misses(isMissing),
    report: sentence => session.report(sentence),
    hearsEngines: listen => listen(firingOf(header.profile), heard => engineEar.take(heard)),
  });

  /**
   * An answer belongs to the question that was shown. Until the last event is on the disk the session still
   * listens for the question before, so an answer waits for that; a stop waits for nothing.
   */
  const say = async (text: string, via: 'keys' | 'touch', shown: string) => {
    const ear = via === 'keys' ? typed : touched;
    if (meansStop(text, language)) {
      stop = 'stopped';
      ear.type(text);
      return;
    }
    await session.settled();
    if (turns.at(session.moment) === shown) ear.type(text);
  };

  const stopFor = (why: { readonly cause?: Emergency }) => {
    session.receive({ type: 'stop', ...why }, callerAtShared(session.moment), 'touch');
    stop = isOver(session.moment) ? 'nothingRuns' : 'stopped';
    changed();
  };

  return {
    id,
    state() {
      state ??= look();
      return state;
    },
    watch: watcher => watchers.add(watcher),
    say: (text, via, turn) => void say(text, via, turn),
    stop: () => stopFor({}),
    callForHelp: cause => stopFor({ cause }),
    bay: null,
    async close() {
      hearing?.close();
      endWatch();
      await speaking.close();
      await session.settled();
      await record.close();
    },
  };
}
