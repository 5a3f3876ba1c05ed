import type { BayDeeds, BayPart } from '../../face/face.ts';
import { words } from '../../words/index.ts';
import { NextJob } from '../next-job.tsx';

/** What the technician has to decide about the others in the bay. */
export function BayBar({
  bay,
  deeds,
  off,
  begun,
  onGoOnAlone,
}: {
  readonly bay: BayPart;
  readonly deeds: BayDeeds;
  /** How the engine is switched off. */
  readonly off: string;
  /** A session goes on: no other one may begin. */
  readonly begun: boolean;
  /** Goes on here with the copy of the session, while the laptop is away. */
  readonly onGoOnAlone?: (() => void) | undefined;
}) {
  return (
    <>
      {bay.away !== 'no' && (
        <section className="laptop-away" role="alert">
          <p>{words.away.shown(off)}</p>
          {bay.away === 'mayGoOn' && onGoOnAlone && (
            <>
              <p>{words.away.how}</p>
              <button type="button" onClick={onGoOnAlone}>
                {words.away.goOn}
              </button>
            </>
          )}
        </section>
      )}
      {bay.follows && (
        <section className="controls">
          <p>{words.follows}</p>
          <button type="button" onClick={deeds.takeOver}>
            {words.takeOver}
          </button>
        </section>
      )}
      {!begun && !bay.follows && bay.link.state === 'connected' && bay.usual && (
        <NextJob bay={bay} deeds={deeds} />
      )}
      {bay.mayBeLeft && !bay.follows && (
        <section className="controls">
          <button type="button" onClick={deeds.setAside}>
            {words.nextJob.setAside}
          </button>
        </section>
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
