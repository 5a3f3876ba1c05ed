import type { ReactNode } from 'react';
import { Stop } from './stop.tsx';

/** The frame of every screen of a session: its content, and the stop control at its edge. */
export function Shell({
  label,
  onStop,
  children,
}: {
  readonly label: string;
  readonly onStop: () => void;
  readonly children: ReactNode;
}) {
  return (
    <div className="shell">
      <main className="content" aria-label={label}>
        {children}
      </main>
      <Stop onStop={onStop} />
    </div>
  );
}
