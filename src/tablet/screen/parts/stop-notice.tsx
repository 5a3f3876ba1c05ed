import { useEffect } from 'react';
import type { View } from '../../../session/view.ts';
import { vibrate } from '../../device/vibrate.ts';
import { type StopState, stopNotice } from '../../face/stop-state.ts';

/** What has become of the stop that this hand gave: at the touch, at the answer, and where none comes. */
export function StopNotice({ stop, view }: { readonly stop: StopState; readonly view: View | null }) {
  const notice = stopNotice(stop, view);
  useEffect(() => {
    if (stop === 'unanswered') vibrate('hazard');
  }, [stop]);
  return (
    <div role="alert" className="stop-notice">
      {notice && <p className={notice.tone}>{notice.text}</p>}
    </div>
  );
}
