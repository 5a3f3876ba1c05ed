import type { Emergency } from '../../../../machines/vocabulary.ts';
import type { FaceState } from '../../face/face.ts';

/** Fire, and somebody who is hurt, in one touch each: everything stops, and help is called for. */
export function CallsForHelp({
  state: { view, emergencies },
  onCall,
}: {
  readonly state: FaceState;
  readonly onCall: (emergency: Emergency) => void;
}) {
  if (!view || view.outcome) return null;
  return (
    <div className="help">
      {emergencies.map(({ emergency, wording }) => (
        <button type="button" key={emergency} onClick={() => onCall(emergency)}>
          <span className="said">{wording}</span>
        </button>
      ))}
    </div>
  );
}
