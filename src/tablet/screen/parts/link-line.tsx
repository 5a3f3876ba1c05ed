import type { BayPart } from '../../face/face.ts';
import { words } from '../../words.ts';

/** How this device is connected. Without a connection its stop reaches nobody, and that is said. */
export function LinkLine({ bay }: { readonly bay: BayPart }) {
  const { link } = bay;
  if (link.state !== 'connected') {
    return (
      <div role="alert" className="problems">
        <p>
          {link.state === 'connecting' ? words.link.connecting : words.link.broken}{' '}
          <strong>{words.link.stopAnyway}</strong> {link.state === 'refused' ? link.sentence : ''}
        </p>
      </div>
    );
  }
  if (link.pairing?.state === 'stopOnly') {
    return (
      <div role="alert" className="problems">
        <p>{link.pairing.sentence}</p>
      </div>
    );
  }
  return (
    <p className="quiet">
      {link.pairing && link.pairing.sentence !== '' && (
        <>
          <strong>{link.pairing.sentence}</strong>{' '}
        </>
      )}
      {link.bay}
      {link.clockOffsetMs === null ? '' : `. ${words.link.offset(link.clockOffsetMs)}`}
    </p>
  );
}
