import { type ChangeEvent, useEffect, useState } from 'react';
import {
  dropModel,
  keepOnDevice,
  type ModelOnDevice,
  modelOnDevice,
  takeFromLaptop,
} from '../../hearing/own-model/model-store.ts';
import { loadPairing } from '../../remote/pairing.ts';
import { inOwnWords, words } from '../../words/index.ts';

/** Which Vosk model is on this device, and how to bring another one. */
export default function OwnModel() {
  const [kept, setKept] = useState<ModelOnDevice | null>(null);
  const [busy, setBusy] = useState(false);
  const [sentence, setSentence] = useState<string | null>(null);
  const [token] = useState(() => loadPairing()?.token);

  useEffect(() => void modelOnDevice().then(setKept), []);

  const attempt = async (deed: () => Promise<ModelOnDevice | null>) => {
    setBusy(true);
    setSentence(null);
    try {
      setKept(await deed());
    } catch (cause) {
      setSentence(cause instanceof Error ? cause.message : String(cause));
    } finally {
      setBusy(false);
    }
  };
  const bring = (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    if (file) void attempt(() => keepOnDevice(file, file.name));
  };
  const drop = async () => {
    await dropModel();
    return null;
  };

  return (
    <fieldset className="own-model">
      <legend>{words.settings.ownModel.title}</legend>
      <p role="status">
        {busy
          ? words.settings.ownModel.checking
          : kept
            ? words.settings.ownModel.kept(kept.name, kept.bytes)
            : words.settings.ownModel.none}
      </p>
      <div role="alert">{sentence && <p className="wrong">{inOwnWords(sentence)}</p>}</div>
      <label className="file">
        {words.settings.ownModel.bring}
        <input type="file" accept=".zip,.gz,.tgz" disabled={busy} onChange={bring} />
      </label>
      <div className="big">
        {token !== undefined && (
          <button
            type="button"
            className="choice"
            disabled={busy}
            onClick={() => void attempt(() => takeFromLaptop(token))}
          >
            {words.settings.ownModel.take}
          </button>
        )}
        {kept && (
          <button type="button" className="choice" disabled={busy} onClick={() => void attempt(drop)}>
            {words.settings.ownModel.drop}
          </button>
        )}
      </div>
    </fieldset>
  );
}
