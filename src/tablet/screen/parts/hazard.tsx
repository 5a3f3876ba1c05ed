import { useEffect, useState } from 'react';
import type { LogLine } from '../../../session/view.ts';
import { vibrate } from '../../device/vibrate.ts';

const SHOWN_MS = 15_000;

/** The last hazard call-out, large and felt, for a while. */
export function Hazard({ log }: { readonly log: readonly LogLine[] }) {
  const last = log.findLast(line => line.who === '!');
  const named = last ? `${last.time} ${last.text}` : '';
  const [over, setOver] = useState('');
  useEffect(() => {
    if (named === '') return;
    vibrate('hazard');
    const timer = setTimeout(() => setOver(named), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [named]);
  return (
    <div role="alert" className="hazard">
      {last && over !== named && <p>{last.text}</p>}
    </div>
  );
}
