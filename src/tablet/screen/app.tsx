import { useCallback, useEffect, useMemo, useState } from 'react';
import { VOCABULARY } from '../../record/vocabulary/index.ts';
import type { PairAnswer } from '../../server/protocol/index.ts';
import { saveFile } from '../device/save-file.ts';
import { devicesFor } from '../devices.ts';
import { ownEngine } from '../local/choice.ts';
import { beginLocal, type LocalSession, resumeLocal } from '../local/local-session.ts';
import { keepOffline, type Offline, type Update } from '../offline/register.ts';
import { allRecords, type KeptRecord, linesOf, recordOf } from '../record/data-base.ts';
import { asFile } from '../record/log-in-browser.ts';
import { type BaySession, joinBay } from '../remote/bay-session.ts';
import { laptopAnswers } from '../remote/laptop-answers.ts';
import { forgetPairing, keepJoined, keepPairing, loadJoined, loadPairing, pair } from '../remote/pairing.ts';
import { sendRecords } from '../remote/upload.ts';
import { whenConnected } from '../remote/when-connected.ts';
import { applySettings, keepSettings, loadSettings } from '../settings.ts';
import { words } from '../words/index.ts';
import { NewEngine } from './new-engine.tsx';
import { Pair } from './pair.tsx';
import { Second } from './second.tsx';
import { Start } from './start.tsx';
import { Supervisor } from './supervisor.tsx';
import { Technician } from './technician.tsx';

const sentenceOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));

const offlineText = (offline: Offline | null) => {
  if (!offline) return '';
  if (offline.state !== 'not') return words.offline[offline.state];
  // In the browser's own words, in its own language: what they mean is always the same.
  return /certificate|SSL/i.test(offline.why)
    ? words.offline.untrusted
    : `${words.offline.not} ${offline.why}`;
};

/** The whole page: the start, or a session. */
export function App({ dataBase }: { readonly dataBase: IDBDatabase }) {
  const [settings, setSettings] = useState(loadSettings);
  const [records, setRecords] = useState<readonly KeptRecord[]>([]);
  const [session, setSession] = useState<LocalSession | null>(null);
  const [pairing, setPairing] = useState(false);
  const [describing, setDescribing] = useState(false);
  const [busy, setBusy] = useState(false);
  const [sentence, setSentence] = useState<string | null>(null);
  const [offline, setOffline] = useState<Offline | null>(null);
  const [sending, setSending] = useState('');
  const [update, setUpdate] = useState<Update | null>(null);
  const [updateWaits, setUpdateWaits] = useState('');
  const enterBay = (answer: PairAnswer): BaySession => {
    const session = joinBay(answer, devicesFor(settings), { units: settings.units, dataBase });
    keepJoined(true);
    // A record is the technician's to send.
    if (answer.role === 'technician')
      whenConnected(session, () => void sendRecords(dataBase, answer.token).then(setSending));
    return session;
  };
  /** Of a page that was loaded anew in the middle of it: STOP is there from its first picture on. */
  const [joined, setJoined] = useState<BaySession | null>(() => {
    const before = loadJoined();
    return before && enterBay(before);
  });

  // While it is rendered: all words below are those of this language.
  useMemo(() => applySettings(settings), [settings]);
  useEffect(() => {
    keepOffline({ onChange: setOffline, onUpdate: setUpdate }).catch((cause: unknown) =>
      setOffline({ state: 'not', why: sentenceOf(cause) }),
    );
  }, []);
  const look = useCallback(() => void allRecords(dataBase).then(setRecords), [dataBase]);
  useEffect(look, [look]);

  /** What takes a while and may fail with a sentence. */
  const attempt = async (deed: () => Promise<void>) => {
    setBusy(true);
    setSentence(null);
    try {
      await deed();
    } catch (cause) {
      setSentence(sentenceOf(cause));
    } finally {
      setBusy(false);
    }
  };
  const open = (opening: Promise<LocalSession>) => attempt(async () => setSession(await opening));
  /** One leads: a copy of the laptop's session is gone on with only while the laptop is away. */
  const resume = (id: string) =>
    attempt(async () => {
      const devices = devicesFor(settings);
      if ((await recordOf(dataBase, id))?.copyOf && (await laptopAnswers()))
        throw new Error(words.away.laptopIsThere);
      setSession(await resumeLocal(dataBase, id, devices));
    });
  const enter = (answer: PairAnswer) => {
    setJoined(enterBay(answer));
    setPairing(false);
  };
  const join = (code: string, device: string) =>
    attempt(async () => {
      const answer = await pair(code, device);
      keepPairing(answer);
      enter(answer);
    });
  const goToBay = () => {
    const before = loadPairing();
    if (before) void attempt(async () => enter(before));
    else setPairing(true);
  };

  /** A session that is not over is never left behind by a version that cannot go on with it. */
  const takeUpdate = async ({ vocabulary, use }: Update) => {
    const open = records.filter(({ state }) => state === 'open').length;
    if (vocabulary !== VOCABULARY && open > 0) setUpdateWaits(words.offline.other(open));
    else if (!(await use())) setUpdateWaits(words.offline.inUse);
  };

  if (joined) {
    const leave = () => {
      // Refused for good: the next time this device has to be paired again.
      if (joined.state().bay?.link.state === 'refused') forgetPairing();
      keepJoined(false);
      setJoined(null);
      setSending('');
      void joined.close().then(look);
    };
    const { role } = joined.state();
    if (role === 'second') return <Second session={joined} onLeave={leave} />;
    if (role === 'supervisor') return <Supervisor session={joined} onLeave={leave} />;
    const goOnAlone = () => {
      const id = joined.state().bay?.session;
      keepJoined(false);
      setJoined(null);
      setSending('');
      void joined.close().then(() => (id ? resume(id) : look()));
    };
    return <Technician face={joined} notice={sending} onLeave={leave} onGoOnAlone={goOnAlone} />;
  }
  if (session) {
    const leave = () => {
      setSession(null);
      void session.close().then(look);
    };
    return <Technician face={session} onLeave={leave} />;
  }
  if (pairing)
    return (
      <Pair
        sentence={sentence}
        busy={busy}
        onJoin={(code, device) => void join(code, device)}
        onBack={() => setPairing(false)}
      />
    );
  if (describing)
    return (
      <NewEngine
        onMade={profile => {
          setSentence(ownEngine(profile) ? null : words.newEngine.notKept);
          setDescribing(false);
        }}
        onLeave={() => setDescribing(false)}
      />
    );
  return (
    <>
      {update && (
        <p className="update" role="status">
          {words.offline.update} {updateWaits}{' '}
          <button type="button" onClick={() => void takeUpdate(update)}>
            {words.offline.use}
          </button>
        </p>
      )}
      <Start
        settings={settings}
        records={records}
        sentence={sentence}
        busy={busy}
        offline={offlineText(offline)}
        deeds={{
          begin: choice =>
            void open(beginLocal(dataBase, { ...choice, units: settings.units }, devicesFor(settings))),
          resume: id => void resume(id),
          save: id =>
            void linesOf(dataBase, id).then(lines =>
              saveFile(asFile(lines.map(({ line }) => line)), `${id}.jsonl`),
            ),
          pair: goToBay,
          describeEngine: () => setDescribing(true),
          set: next => {
            keepSettings(next);
            setSettings(next);
          },
        }}
      />
    </>
  );
}
