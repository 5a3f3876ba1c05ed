import type { HearingView } from '../../../session/view.ts';
import { quoted, words } from '../../words/index.ts';

const SILENT_DBFS = -70;

/** What was heard last, and whether anything listens: one line, always in sight. */
export function Ear({ hearing }: { readonly hearing: HearingView }) {
  const { source, levelDbfs, clipping, speech, speaking, last } = hearing;
  const share = levelDbfs === null ? 0 : Math.max(0, Math.min(1, 1 - levelDbfs / SILENT_DBFS));
  return (
    <section className="ear" aria-label={words.heard}>
      <p className={last && !last.counted ? 'heard unclear' : 'heard'}>
        {last
          ? `${words.heard}: ${quoted(last.text)}${last.counted ? '' : `, ${words.notCounted}`}`
          : words.nothingHeard}
      </p>
      {levelDbfs !== null && (
        <span className={speech ? 'level speech' : 'level'} aria-hidden="true">
          <span style={{ inlineSize: `${share * 100}%` }} />
        </span>
      )}
      <p className="source">
        <span className="hears">{words.hears}: </span>
        {source === 'keys' ? words.byTouch : source}
        {speaking ? `. ${words.speaking}.` : ''}
        {clipping ? ` ${words.tooLoud}.` : ''}
      </p>
    </section>
  );
}
