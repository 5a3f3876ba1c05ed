import type { View } from '../../../session/view.ts';
import { words } from '../../words.ts';

const bannerOf = ({ state, engine, outcome }: View) => {
  if (outcome) return { tone: outcome === 'signedOff' ? 'good' : 'plain', text: words.over[outcome] };
  if (state === 'stopped') return { tone: 'danger', text: words.stopped };
  if (state === 'held') return { tone: 'caution', text: words.held };
  return { tone: engine === 'off' ? 'plain' : 'caution', text: words.engine[engine] };
};

/** Where in the procedure this is, and what the engine does. */
export function Head({ view }: { readonly view: View }) {
  const banner = bannerOf(view);
  return (
    <header className="head">
      <p className="phase">
        <span>{words.phaseOf(view.phaseNumber, view.phaseCount)}</span> <strong>{view.phase}</strong>
      </p>
      <p className={`banner ${banner.tone}`} role="status">
        {banner.text}
      </p>
      {view.invented && <p className="invented">{words.invented}</p>}
    </header>
  );
}
