import type { PairAnswer } from '../../server/protocol/index.ts';
import { SystemClock } from '../../session/clock.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { Recognizer } from '../../voice/ports.ts';
import { tellBattery } from '../device/battery.ts';
import type { Devices } from '../devices.ts';
import { DeafHere } from '../face/deaf.ts';
import type { BayDeeds, Face, FaceState } from '../face/face.ts';
import { saysStop } from '../face/says-stop.ts';
import { offOf, type StopState } from '../face/stop-state.ts';
import { Watchers } from '../face/watchers.ts';
import { loadedProfiles } from '../local/choice.ts';
import { words } from '../words/index.ts';
import { toSayAfterBreak } from './after-break.ts';
import { type Away, AwayWatch } from './away.ts';
import { faceStateOf } from './bay-face.ts';
import { BayVoice } from './bay-voice.ts';
import { bringProfile } from './bring-profile.ts';
import { Connection } from './connection.ts';
import { HeardThere } from './heard-there.ts';
import { LogBook, type Milestone } from './log-book.ts';
import { Mirror } from './mirror.ts';
import { OwnHearing } from './own-hearing.ts';
import { keepPairing } from './pairing.ts';
import { pastSessions, reportOf } from './past-sessions.ts';
import { stopsOfTab } from './stops-of-tab.ts';
import { Troubles } from './troubles.ts';
import { sendRecords } from './upload.ts';
import { webSocketLine } from './web-socket-line.ts';

/** A session that runs on the bay's laptop, as one device sees it. */
export interface BaySession extends Face {
  milestones(): readonly Milestone[];
  /** Sends the laptop the records of this device, with what has become of them in a sentence. */
  sendRecords(): Promise<string>;
  /** Leaves, once a stop that was given has its answer or was told to have none: how that stands is given back. */
  close(): Promise<StopState>;
}

const LOG_EVERY_MS = 3_000;

/** While it is held, no new version of the page takes over (`offline/service-worker.ts`). */
function holdOpen(): () => void {
  let release = () => {};
  void navigator.locks?.request(
    'session',
    { mode: 'shared' },
    () => new Promise<void>(end => (release = end)),
  );
  return () => release();
}

/** Joins the bay that this device is paired with: at once, so that STOP waits for no voice. */
export function joinBay(
  pairing: PairAnswer,
  devices: Devices,
  { units, dataBase }: { readonly units: UnitSystem; readonly dataBase: IDBDatabase },
): BaySession {
  const { role, token, bay } = pairing;
  const clock = new SystemClock();
  const release = holdOpen();
  const watchers = new Watchers();
  const recognizers: Recognizer[] = [];
  let logBook: LogBook | null = null;
  let face: FaceState | null = null;
  /** This device led when the laptop was heard of last. */
  let led = false;
  let turnRead: string | undefined;
  let lostTold = false;
  const mirrorOf = (session: string) => (role === 'technician' ? new Mirror(dataBase, session, bay) : null);
  const changed = () => {
    face = null;
    watchers.changed();
  };
  const after = (ms: number, act: () => void) => void setTimeout(act, ms);
  const nowMs = () => performance.now();
  const away = new AwayWatch(after, () => {
    const view = connection.state?.view;
    const isOff = !view || view.outcome !== null || view.engine === 'off';
    void voice.say({
      text: isOff ? words.away.waits : words.away.keyOff(offOf(view)),
      priority: isOff ? 'notice' : 'hazard',
    });
    changed();
  });
  const awayNow = (): Away => {
    if (!away.isAway) return 'no';
    return led && logBook?.hasCopy ? 'mayGoOn' : 'away';
  };

  const troubles = new Troubles(changed, after);
  const voice = new BayVoice(
    devices.speaking(clock, devices.language),
    speaks => {
      for (const recognizer of recognizers) recognizer.onlyStop(speaks);
    },
    sentence => troubles.add(sentence),
  );
  let shouted: Promise<void> = Promise.resolve();
  const heardThere: HeardThere = new HeardThere(() => connection, nowMs);
  const deaf = new DeafHere(changed);
  const endWatch = devices.watchAsleep(isAsleep => deaf.sleeps(isAsleep));
  const ownHearing = new OwnHearing(nowMs, level => connection.tell({ type: 'level', ...level }));
  const own = () => connection.state?.devices.find(({ id }) => id === connection.device);

  /** Hazards are for everybody; the rest is said by whoever leads, and by the second person's what is for them. */
  const isForThisDevice = (priority: string, addressed: string) =>
    priority === 'hazard' ||
    (role === 'technician' && own()?.owner === true) ||
    (role === 'second' && addressed === 'second');

  const connection = new Connection(
    {
      token,
      openLine: webSocketLine,
      nowMs,
      wallMs: () => Date.now(),
      after,
      newId: () => crypto.randomUUID(),
      keptStops: stopsOfTab,
    },
    {
      onState() {
        const { state } = connection;
        if (state?.grammar) {
          // An answer to the same words asked once more is another answer.
          for (const recognizer of recognizers) recognizer.listen({ ...state.grammar, key: state.turn });
        }
        if (state?.session && logBook?.session !== state.session)
          logBook = new LogBook(state.session, token, mirrorOf(state.session));
        if (state && connection.lineState === 'connected') led = own()?.owner === true;
        if (state?.turn !== turnRead) {
          turnRead = state?.turn;
          // What was answered is in the copy before the next answer.
          if (led) void logBook?.readOn();
        }
        const isLost = state !== null && state.lost !== null;
        if (isLost && !lostTold)
          void voice.say({ text: words.lost.sentence(offOf(null)), priority: 'hazard' });
        lostTold = isLost;
        // Another tab of this browser has the line: the laptop is there.
        away.look(connection.lineState === 'connected' || connection.refusal?.code === 'replaced');
        heardThere.look();
        changed();
      },
      onSay({ text, priority, addressed, seq }) {
        if (!isForThisDevice(priority, addressed)) return;
        void voice.say({ text, priority }).then(() => connection.tell({ type: 'spoken', seq }));
      },
      onHush: () => voice.hush(),
      onCaughtUp(missed) {
        const { state } = connection;
        if (missed.hushed) voice.hush();
        const addressed = state?.view?.addressed ?? 'technician';
        const said = (state ? toSayAfterBreak(missed, state) : [])
          .filter(({ priority }) => isForThisDevice(priority, addressed))
          .map(sentence => voice.say(sentence));
        const last = missed.said?.at(-1);
        // The laptop may be waiting for it.
        if (last) void Promise.all(said).then(() => connection.tell({ type: 'spoken', seq: last.seq }));
      },
      onRefused: sentence => troubles.refuse(sentence),
      onPairing: ({ expiresAtMs }) => keepPairing({ ...pairing, expiresAtMs }),
      onUnanswered() {
        shouted = voice.say({
          text: words.stopStates.shout(offOf(connection.state?.view ?? null)),
          priority: 'hazard',
        });
      },
    },
  );
  const stopTelling = tellBattery(battery => connection.tell({ type: 'battery', ...battery }));
  const readLog = setInterval(() => void logBook?.readOn().then(changed), LOG_EVERY_MS);

  // The supervisor's device does not listen: nobody says yes for others.
  const hearing =
    role === 'supervisor'
      ? null
      : devices.hearing(devices.language, {
          attach(recognizer) {
            recognizers.push(recognizer);
            heardThere.attach(recognizer);
            const { state } = connection;
            if (state?.grammar) recognizer.listen({ ...state.grammar, key: state.turn });
          },
          listensWith(source) {
            connection.setListening(ownHearing.listensWith(source));
            changed();
          },
          level(heard) {
            ownHearing.hears(heard);
            changed();
          },
          noSound: isMissing => deaf.misses(isMissing),
          hearsEngines: listen => heardThere.hearsEngines(listen),
          report: sentence => troubles.add(sentence),
        });

  const begin: BayDeeds['begin'] = async ({ profile: name, job, language }) => {
    const own = loadedProfiles().find(each => each.name === name);
    try {
      const profile = own ? await bringProfile(token, own) : name;
      // What was left empty goes unsaid.
      const filled = Object.fromEntries(
        Object.entries(job).flatMap(([line, text]) => (text ? [[line, text]] : [])),
      );
      connection.command({ do: 'begin', profile, job: filled, units, language });
    } catch (cause) {
      troubles.add(cause instanceof Error ? cause.message : String(cause));
    }
  };

  const look = (): FaceState =>
    faceStateOf(connection, {
      role,
      bay,
      troubles: troubles.sentences,
      refusal: troubles.refusal,
      plots: logBook?.plots ?? [],
      follows: role === 'technician' && own()?.owner === false,
      away: awayNow(),
      deaf: deaf.state,
      hearing: hearing => (role === 'supervisor' ? hearing : ownHearing.shownIn(hearing)),
    });

  return {
    state() {
      face ??= look();
      return face;
    },
    watch: watcher => watchers.add(watcher),
    say(text, via, turn) {
      if (saysStop(text)) connection.command({ do: 'stop' });
      else if (turn !== '') connection.command({ do: 'say', turn, text, via });
    },
    stop: () => connection.command({ do: 'stop' }),
    callForHelp: cause => connection.command({ do: 'stop', cause }),
    bay: {
      askHold: () => connection.command({ do: 'askHold' }),
      declineHold: () => connection.command({ do: 'declineHold' }),
      takeOver: () => connection.command({ do: 'takeOver' }),
      begin,
      bringEngine: profile => bringProfile(token, profile),
      resume: session => connection.command({ do: 'resume', session }),
      setAside: () => connection.command({ do: 'setAside' }),
      madeSafe: () => connection.command({ do: 'madeSafe' }),
      takeLine: () => connection.takeLine(),
      renew: device => connection.command({ do: 'renew', device }),
      letGo: device => connection.command({ do: 'forget', device }),
      sessions: find => pastSessions(token, find),
      report: session => reportOf(token, session),
    },
    milestones: () => logBook?.milestones ?? [],
    sendRecords: () => sendRecords(dataBase, token),
    async close() {
      release();
      clearInterval(readLog);
      stopTelling();
      hearing?.close();
      endWatch();
      await connection.close();
      await shouted;
      await voice.close();
      return connection.stop;
    },
  };
}
