import type { ReactNode } from 'react';
import type { FaceState } from '../../face/face.ts';
import { Stop } from './stop.tsx';
import { StopNotice } from './stop-notice.tsx';

/** The frame of every screen of a session: its content, and the stop control at its edge. */
export function Shell({
  label,
  state,
  onStop,
  children,
}: {
  readonly label: string;
  readonly state: Pick<FaceState, 'stop' | 'view'>;
  readonly onStop: () => void;
  readonly children: ReactNode;
}) {
  return (
    <div className="shell">
      <main className="content" aria-label={label}>
        <StopNotice stop={state.stop} view={state.view} />
        {children}
      </main>
      <Stop onStop={onStop} />
    </div>
  );
}
