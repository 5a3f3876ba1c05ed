import { useCallback, useEffect, useMemo, useState } from 'react';
import { VOCABULARY } from '../../record/vocabulary/index.ts';
import type { PairAnswer } from '../../server/protocol/index.ts';
import { saveFile } from '../device/save-file.ts';
import { devicesFor } from '../devices.ts';
import { offOf } from '../face/stop-state.ts';
import { ownEngine } from '../local/choice.ts';
import { beginLocal, type LocalSession, resumeLocal } from '../local/local-session.ts';
import { keepOffline, type Offline, type Update } from '../offline/register.ts';
import { allRecords, type KeptRecord, linesOf, recordOf } from '../record/data-base.ts';
import { asFile } from '../record/log-in-browser.ts';
import type { BaySession } from '../remote/bay-session.ts';
import { enterBay } from '../remote/enter-bay.ts';
import { laptopAnswers } from '../remote/laptop-answers.ts';
import { forgetPairing, keepJoined, keepPairing, loadPairing, pair } from '../remote/pairing.ts';
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
export function App({
  dataBase,
  before,
}: {
  readonly dataBase: IDBDatabase;
  /** Of a page that was loaded anew in the middle of it: STOP is there from its first picture on. */
  readonly before: BaySession | null;
}) {
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
  const [joined, setJoined] = useState(before);

  // While it is rendered: all words below are those of this language.
  useMemo(() => applySettings(settings), [settings]);
  useEffect(() => {
    keepOffline({ onChange: setOffline, onUpdate: setUpdate }).catch((cause: unknown) =>
      setOffline({ state: 'not', why: sentenceOf(cause) }),
    );
  }, []);
  const look = useCallback(() => void allRecords(dataBase).then(setRecords), [dataBase]);
  useEffect(look, [look]);
  useEffect(() => {
    // A record is the technician's to send.
    if (joined?.state().role !== 'technician') return;
    return whenConnected(joined, () => void joined.sendRecords().then(setSending));
  }, [joined]);

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
  const goOnHere = async (id: string) => setSession(await resumeLocal(dataBase, id, devicesFor(settings)));
  /** One leads: a copy of the laptop's session is gone on with only while the laptop is away. */
  const resume = (id: string) =>
    attempt(async () => {
      if ((await recordOf(dataBase, id))?.copyOf && (await laptopAnswers()))
        throw new Error(words.away.laptopIsThere);
      await goOnHere(id);
    });
  const enter = (answer: PairAnswer) => {
    setJoined(enterBay(answer, settings, dataBase));
    setPairing(false);
  };
  /** A stop that nobody answered is told beyond the bay in which it was given. */
  const leaveBay = async (bay: BaySession) => {
    // In the bay is the tab that has the line.
    if (bay.state().bay?.link.refusal?.code !== 'replaced') keepJoined(false);
    setJoined(null);
    setSending('');
    const off = offOf(bay.state().view);
    if ((await bay.close()) === 'unanswered') setSentence(words.stopStates.unanswered(off));
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
      // The laptop does not know it: the next time this device has to be paired again.
      if (joined.state().bay?.link.refusal?.code === 'notPaired') forgetPairing();
      void leaveBay(joined).then(look);
    };
    const { role } = joined.state();
    if (role === 'second') return <Second session={joined} onLeave={leave} />;
    if (role === 'supervisor') return <Supervisor session={joined} onLeave={leave} />;
    const goOnAlone = () =>
      attempt(async () => {
        const id = joined.state().bay?.session;
        // It may have come back: then STOP is there still, and reaches everybody.
        if (await laptopAnswers()) return setSending(words.away.laptopIsThere);
        await leaveBay(joined);
        if (id) await goOnHere(id);
        else look();
      });
    return <Technician face={joined} notice={sending} onLeave={leave} onGoOnAlone={() => void goOnAlone()} />;
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
