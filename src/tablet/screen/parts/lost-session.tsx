import type { Face, FaceState } from '../../face/face.ts';
import { words } from '../../words/index.ts';
import { useTouch } from '../use-touch.ts';

/** Where a session was lost: whoever is at its engine says that it is off and safe, before anything else is begun. */
export function LostSession({ face, state }: { readonly face: Face; readonly state: FaceState }) {
  const isLost = state.bay?.lost === true;
  const touch = useTouch(face, state.turn, String(isLost));
  if (!isLost) return null;
  return (
    <section aria-label={words.lost.how}>
      <p>{words.lost.how}</p>
      <button
        type="button"
        className="choice first"
        aria-disabled={!touch.ready}
        onClick={() => touch.once(() => face.bay?.madeSafe())}
      >
        {words.lost.madeSafe}
      </button>
    </section>
  );
}
