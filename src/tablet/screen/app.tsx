import { useCallback, useEffect, useState } from 'react';
import { openAudio } from '../device/audio.ts';
import { saveFile } from '../device/save-file.ts';
import { startHearing } from '../hearing/choose.ts';
import type { Listener } from '../hearing/start-hearing.ts';
import { beginLocal, type Devices, type LocalSession, resumeLocal } from '../local/local-session.ts';
import { keepOffline, type Offline } from '../offline/register.ts';
import { allRecords, type KeptRecord, linesOf } from '../record/data-base.ts';
import { asFile } from '../record/log-in-browser.ts';
import { applySettings, keepSettings, loadSettings, type Settings } from '../settings.ts';
import { chooseVoice } from '../speaking/choose.ts';
import { words } from '../words.ts';
import { Start } from './start.tsx';
import { Technician } from './technician.tsx';

const sentenceOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));

const offlineText = (offline: Offline | null) => {
  if (!offline) return '';
  return offline.state === 'not' ? `${words.offline.not} ${offline.why}` : words.offline[offline.state];
};

/** This device, as it is set up; to be called from a touch, because only then may it sound. */
function devicesFor({ ear, voice }: Settings): Devices {
  const context = ear === 'keys' && voice === 'silent' ? null : openAudio();
  return {
    speaking: clock => chooseVoice(voice, 'en', context, clock),
    hearing: (listener: Listener) => (context ? startHearing(ear, context, listener) : null),
  };
}

/** The whole page: the start, or a session. */
export function App({ dataBase }: { readonly dataBase: IDBDatabase }) {
  const [settings, setSettings] = useState(loadSettings);
  const [records, setRecords] = useState<readonly KeptRecord[]>([]);
  const [session, setSession] = useState<LocalSession | null>(null);
  const [busy, setBusy] = useState(false);
  const [sentence, setSentence] = useState<string | null>(null);
  const [offline, setOffline] = useState<Offline | null>(null);
  const [update, setUpdate] = useState<{ readonly use: () => void } | null>(null);

  useEffect(() => applySettings(settings), [settings]);
  useEffect(() => {
    keepOffline({ onChange: setOffline, onUpdate: use => setUpdate({ use }) }).catch((cause: unknown) =>
      setOffline({ state: 'not', why: sentenceOf(cause) }),
    );
  }, []);
  const look = useCallback(() => void allRecords(dataBase).then(setRecords), [dataBase]);
  useEffect(look, [look]);

  const open = async (opening: Promise<LocalSession>) => {
    setBusy(true);
    setSentence(null);
    try {
      setSession(await opening);
    } catch (cause) {
      setSentence(sentenceOf(cause));
    } finally {
      setBusy(false);
    }
  };

  if (session) {
    const leave = () => {
      setSession(null);
      void session.close().then(look);
    };
    return <Technician face={session} onLeave={leave} />;
  }
  return (
    <>
      {update && (
        <p className="update" role="status">
          {words.offline.update}{' '}
          <button type="button" onClick={update.use}>
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
          begin: (profile, job) =>
            void open(beginLocal(dataBase, { profile, job, units: settings.units }, devicesFor(settings))),
          resume: id => void open(resumeLocal(dataBase, id, devicesFor(settings))),
          save: id =>
            void linesOf(dataBase, id).then(lines =>
              saveFile(asFile(lines.map(({ line }) => line)), `${id}.jsonl`),
            ),
          pair: () => {},
          set: next => {
            keepSettings(next);
            setSettings(next);
          },
        }}
      />
    </>
  );
}
