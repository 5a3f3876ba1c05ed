import { useState } from 'react';
import { inOwnWords, words } from '../words/index.ts';

/** As the laptop shows it, pasted or dictated: with a blank between, or whatever else. */
const digitsIn = (text: string) => text.replace(/\D/g, '').slice(0, 6);

/** Where a device joins the bay's laptop, with the six digits that the laptop shows. */
export function Pair({
  sentence,
  busy,
  onJoin,
  onBack,
}: {
  readonly sentence: string | null;
  readonly busy: boolean;
  readonly onJoin: (code: string, device: string) => void;
  readonly onBack: () => void;
}) {
  const [code, setCode] = useState('');
  const [device, setDevice] = useState('');
  const ready = /^\d{6}$/.test(code) && device.trim() !== '';
  return (
    <main className="start">
      <h1>{words.pair.title}</h1>
      <p>{words.pair.how}</p>
      <div role="alert">{sentence && <p className="wrong">{inOwnWords(sentence)}</p>}</div>
      <form
        className="card"
        onSubmit={event => {
          event.preventDefault();
          if (ready) onJoin(code, device.trim());
        }}
      >
        <label>
          {words.pair.code}
          <input
            className="code"
            inputMode="numeric"
            autoComplete="one-time-code"
            value={code}
            onChange={event => setCode(digitsIn(event.target.value))}
          />
        </label>
        <label>
          {words.pair.device}
          <input maxLength={40} value={device} onChange={event => setDevice(event.target.value)} />
        </label>
        <div className="big">
          <button type="submit" className="choice first" disabled={!ready || busy}>
            {words.pair.join}
          </button>
          <button type="button" className="choice" onClick={onBack}>
            {words.pair.back}
          </button>
        </div>
      </form>
    </main>
  );
}
