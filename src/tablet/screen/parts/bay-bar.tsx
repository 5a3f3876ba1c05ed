import type { BayDeeds, BayPart } from '../../face/face.ts';
import { words } from '../../words/index.ts';

/** What the technician has to decide about the others in the bay. */
export function BayBar({
  bay,
  deeds,
  begun,
}: {
  readonly bay: BayPart;
  readonly deeds: BayDeeds;
  readonly begun: boolean;
}) {
  return (
    <>
      {bay.follows && (
        <section className="controls">
          <p>{words.follows}</p>
          <button type="button" onClick={deeds.takeOver}>
            {words.takeOver}
          </button>
        </section>
      )}
      {!begun && bay.link.state === 'connected' && (
        <button type="button" className="choice first" onClick={deeds.begin}>
          {words.start.title}
        </button>
      )}
      {bay.holdAskedBy !== null && (
        <section className="controls" role="alert">
          <p>{words.holdAsked(bay.holdAskedBy)}</p>
          <button type="button" onClick={deeds.declineHold}>
            {words.holdNo}
          </button>
        </section>
      )}
    </>
  );
}
