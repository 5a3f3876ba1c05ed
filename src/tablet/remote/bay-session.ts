import { languages } from '../../../prompts/index.ts';
import type { PairAnswer } from '../../server/protocol/index.ts';
import { SystemClock } from '../../session/clock.ts';
import { meansStop } from '../../session/stop-words.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { HearingView } from '../../session/view.ts';
import type { EarLevel, Recognizer } from '../../voice/ports.ts';
import { tellBattery } from '../device/battery.ts';
import type { Devices } from '../devices.ts';
import type { BayDeeds, Face, FaceState } from '../face/face.ts';
import { Watchers } from '../face/watchers.ts';
import { loadedProfiles } from '../local/choice.ts';
import { words } from '../words/index.ts';
import { type Away, AwayWatch } from './away.ts';
import { bringProfile } from './bring-profile.ts';
import { Connection, type Line } from './connection.ts';
import { HeardThere } from './heard-there.ts';
import { LogBook, type Milestone } from './log-book.ts';
import { Mirror } from './mirror.ts';
import { keepPairing } from './pairing.ts';
import { pastSessions, reportOf } from './past-sessions.ts';

/** A session that runs on the bay's laptop, as one device sees it. */
export interface BaySession extends Face {
  milestones(): readonly Milestone[];
  close(): Promise<void>;
}

/** As a session calls what is done without a voice. */
const KEYS = 'keys';

const TROUBLES_SHOWN = 5;
const REFUSAL_SHOWN_MS = 8_000;
const LOG_EVERY_MS = 3_000;
const LEVEL_EVERY_MS = 250;

function webSocketLine(): Line {
  const socket = new WebSocket(`${location.protocol === 'https:' ? 'wss' : 'ws'}://${location.host}/ws`);
  return {
    send: text => socket.send(text),
    close: () => socket.close(),
    onOpen: handler => socket.addEventListener('open', handler),
    onText: handler =>
      socket.addEventListener('message', ({ data }) => {
        if (typeof data === 'string') handler(data);
      }),
    onClosed: handler => socket.addEventListener('close', handler),
  };
}

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

/** Joins the bay that this device is paired with. */
export async function joinBay(
  pairing: PairAnswer,
  devices: Devices,
  { units, dataBase }: { readonly units: UnitSystem; readonly dataBase: IDBDatabase },
): Promise<BaySession> {
  const { role, token, bay } = pairing;
  const clock = new SystemClock();
  const release = holdOpen();
  const speaking = await devices.speaking(clock, devices.language);
  const watchers = new Watchers();
  const recognizers: Recognizer[] = [];
  let troubles: readonly string[] = [];
  let logBook: LogBook | null = null;
  let face: FaceState | null = null;
  let levelSentMs = Number.NEGATIVE_INFINITY;
  let sentNth = 0;
  let refusal = '';
  let refusalOver: ReturnType<typeof setTimeout> | undefined;
  /** What this device itself hears; null until it does. */
  let level: EarLevel | null = null;
  /** This device led when the laptop was heard of last. */
  let led = false;
  let turnRead: string | undefined;
  const mirrorOf = (session: string) => (role === 'technician' ? new Mirror(dataBase, session, bay) : null);
  const away = new AwayWatch(
    (ms, act) => setTimeout(act, ms),
    () => {
      const view = connection.state?.view;
      const isOff = !view || view.outcome !== null || view.engine === 'off';
      void speaking.speech.enqueue({
        text: isOff ? words.away.waits : words.away.keyOff,
        priority: isOff ? 'notice' : 'hazard',
      });
      changed();
    },
  );
  const awayNow = (): Away => {
    if (!away.isAway) return 'no';
    return led && logBook?.hasCopy ? 'mayGoOn' : 'away';
  };
  /** What this device hears with; nothing, until it does. */
  let ear = KEYS;

  const changed = () => {
    face = null;
    watchers.changed();
  };
  const trouble = (sentence: string) => {
    troubles = [...troubles.filter(each => each !== sentence), sentence].slice(-TROUBLES_SHOWN);
    changed();
  };
  /** A refusal is about one moment: nobody has to read it later. */
  const refuse = (sentence: string) => {
    refusal = sentence;
    clearTimeout(refusalOver);
    refusalOver = setTimeout(() => {
      refusal = '';
      changed();
    }, REFUSAL_SHOWN_MS);
    changed();
  };
  const heardThere: HeardThere = new HeardThere(
    () => connection,
    () => performance.now(),
  );
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
      nowMs: () => performance.now(),
      wallMs: () => Date.now(),
      after: (ms, act) => setTimeout(act, ms),
      newId: () => crypto.randomUUID(),
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
        away.look(connection.lineState === 'connected');
        heardThere.look();
        changed();
      },
      onSay({ text, priority, addressed, seq }) {
        if (!isForThisDevice(priority, addressed)) return;
        void speaking.speech.enqueue({ text, priority }).then(outcome => {
          if (outcome.kind === 'failed') trouble(outcome.reason);
          connection.tell({ type: 'spoken', seq });
        });
      },
      onHush: () => speaking.speech.clear(),
      onRefused: refuse,
      onPairing: ({ expiresAtMs }) => keepPairing({ ...pairing, expiresAtMs }),
      onUnanswered: () => void speaking.speech.enqueue({ text: words.stopStates.shout, priority: 'hazard' }),
    },
  );
  speaking.speech.onSpeaking(sentence => {
    for (const recognizer of recognizers) recognizer.onlyStop(sentence !== undefined);
  });
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
            ear = source;
            if (source === KEYS) level = null;
            connection.setListening(source !== KEYS);
            changed();
          },
          level(heard) {
            level = heard;
            changed();
            const isNews = heard.utterance !== undefined && heard.utterance.nth !== sentNth;
            if (!isNews && performance.now() - levelSentMs < LEVEL_EVERY_MS) return;
            levelSentMs = performance.now();
            sentNth = heard.utterance?.nth ?? sentNth;
            connection.tell({ type: 'level', ...heard });
          },
          hearsEngines: listen => heardThere.hearsEngines(listen),
          report: trouble,
        });

  const ownHearing = (hearing: HearingView): HearingView => ({
    ...hearing,
    source: ear,
    levelDbfs: level?.levelDbfs ?? null,
    clipping: level?.clipping ?? false,
    speech: level?.speech ?? false,
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
      trouble(cause instanceof Error ? cause.message : String(cause));
    }
  };

  const look = (): FaceState => {
    const { state, lineState, offset } = connection;
    const view = state?.view ?? null;
    return {
      role,
      view: view && {
        ...view,
        problems: [...view.problems, ...troubles],
        // Who holds this device has to know whether it hears, not whether another one does.
        hearing: role === 'supervisor' ? view.hearing : ownHearing(view.hearing),
      },
      turn: state?.turn ?? '',
      stop: connection.stop,
      takenAtMs: connection.takenAtMs,
      plots: logBook?.plots ?? [],
      bay: {
        link: {
          state: lineState,
          bay,
          sentence: troubles.at(-1) ?? null,
          clockOffsetMs: offset?.offsetMs ?? null,
          pairing: connection.pairing,
        },
        clear: state?.clear.state ?? 'notAsked',
        holdAskedBy: state?.holdAsked?.by ?? null,
        follows: role === 'technician' && own()?.owner === false,
        session: state?.session ?? null,
        devices: state?.devices ?? [],
        troubles,
        device: connection.device,
        refusal,
        serverAheadMs: -(offset?.offsetMs ?? 0),
        engines: state?.profiles ?? [],
        usual: state?.usual ?? null,
        mayBeLeft: state?.mayBeLeft ?? false,
        board: connection.board,
        boardAtMs: connection.boardAtMs,
        away: awayNow(),
      },
    };
  };

  return {
    state() {
      face ??= look();
      return face;
    },
    watch: watcher => watchers.add(watcher),
    say(text, via, turn) {
      if (Object.values(languages).some(language => meansStop(text, language)))
        connection.command({ do: 'stop' });
      else if (turn !== '') connection.command({ do: 'say', turn, text, via });
    },
    stop: () => connection.command({ do: 'stop' }),
    bay: {
      askHold: () => connection.command({ do: 'askHold' }),
      declineHold: () => connection.command({ do: 'declineHold' }),
      takeOver: () => connection.command({ do: 'takeOver' }),
      begin,
      bringEngine: profile => bringProfile(token, profile),
      resume: session => connection.command({ do: 'resume', session }),
      setAside: () => connection.command({ do: 'setAside' }),
      renew: device => connection.command({ do: 'renew', device }),
      letGo: device => connection.command({ do: 'forget', device }),
      sessions: find => pastSessions(token, find),
      report: session => reportOf(token, session),
    },
    milestones: () => logBook?.milestones ?? [],
    async close() {
      release();
      clearInterval(readLog);
      clearTimeout(refusalOver);
      stopTelling();
      connection.close();
      hearing?.close();
      await speaking.close();
    },
  };
}
