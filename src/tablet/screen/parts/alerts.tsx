import { useEffect } from 'react';
import type { Role } from '../../../server/protocol/index.ts';
import type { View } from '../../../session/view.ts';
import { vibrate } from '../../device/vibrate.ts';
import type { FaceState } from '../../face/face.ts';
import { missingRoles } from '../../face/missing.ts';
import { offOf, stopNotice } from '../../face/stop-state.ts';
import { inOwnWords, words } from '../../words/index.ts';

/** Out of sight beside a running engine is a stop; beside one that stands, a hold. */
const whatToDo = (role: Role, engine: View['engine']) => {
  if (role !== 'second') return 'technician';
  return engine === 'off' ? 'second' : 'secondRunning';
};

/** What has to be seen at once: what became of a stop, what was called out and has to be done, a line that is broken. */
export function Alerts({ state }: { readonly state: FaceState }) {
  const { stop, view, bay, deaf } = state;
  const notice = stopNotice(stop, view);
  const callOuts = view?.callOuts ?? [];
  const [newest = ''] = callOuts;
  useEffect(() => {
    if (stop === 'unanswered') vibrate('hazard');
  }, [stop]);
  useEffect(() => {
    if (newest !== '') vibrate('hazard');
  }, [newest]);
  const missing = bay ? missingRoles(bay).filter(role => role !== state.role) : [];
  const link = bay?.link;
  const isCutOff = link !== undefined && link.state !== 'connected';
  return (
    <div className="alerts">
      <div role="alert" className="loud">
        {bay?.lost && <p className="danger">{words.lost.sentence(offOf(null))}</p>}
        {notice && <p className={notice.tone}>{notice.text}</p>}
        {callOuts.map(text => (
          <p key={text} className="danger">
            {text}
          </p>
        ))}
      </div>
      <div role="alert" className="problems">
        {deaf !== 'no' && (
          <p>
            <strong>{words.deaf[deaf]}</strong>
          </p>
        )}
        {isCutOff && (
          <p>
            {link.state === 'connecting' && words.link.connecting}
            {link.state === 'broken' && words.link.broken}
            {link.refusal && inOwnWords(link.refusal.sentence)}{' '}
            <strong>{words.link.stopAnyway(offOf(view))}</strong>
          </p>
        )}
        {!isCutOff &&
          view &&
          !view.outcome &&
          missing.map(role => <p key={role}>{words.missing[whatToDo(role, view.engine)]}</p>)}
        {link?.pairing?.state === 'stopOnly' && <p>{inOwnWords(link.pairing.sentence)}</p>}
      </div>
    </div>
  );
}
