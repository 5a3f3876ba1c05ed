import { type ChangeEvent, useEffect, useState } from 'react';
import {
  dropModel,
  keepOnDevice,
  type ModelOnDevice,
  modelOnDevice,
  takeFromLaptop,
} from '../../hearing/own-model/model-store.ts';
import { loadPairing } from '../../remote/pairing.ts';
import { words } from '../../words/index.ts';

const text = words.settings.ownModel;

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
      <legend>{text.title}</legend>
      <p role="status">{busy ? text.checking : kept ? text.kept(kept.name, kept.bytes) : text.none}</p>
      <div role="alert">{sentence && <p className="wrong">{sentence}</p>}</div>
      <label className="file">
        {text.bring}
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
            {text.take}
          </button>
        )}
        {kept && (
          <button type="button" className="choice" disabled={busy} onClick={() => void attempt(drop)}>
            {text.drop}
          </button>
        )}
      </div>
    </fieldset>
  );
}
