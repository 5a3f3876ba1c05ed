import type { BayPart } from '../../face/face.ts';
import { inOwnWords, words } from '../../words/index.ts';

/** How this device is connected, in passing; what is wrong with it stands among the alerts. */
export function LinkLine({ bay: { link } }: { readonly bay: BayPart }) {
  const news = link.pairing && link.pairing.state !== 'stopOnly' ? link.pairing.sentence : '';
  return (
    <p className="quiet">
      {news !== '' && (
        <>
          <strong>{inOwnWords(news)}</strong>{' '}
        </>
      )}
      {link.bay}
      {link.clockOffsetMs === null ? '' : `. ${words.link.offset(link.clockOffsetMs)}`}
    </p>
  );
}
