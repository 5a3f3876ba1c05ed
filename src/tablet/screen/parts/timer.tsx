import { leftText } from '../../../session/clock-text.ts';
import type { View } from '../../../session/view.ts';
import { words } from '../../words/index.ts';
import { useNow } from '../use-face.ts';

/** The time that runs, counting down by itself between two looks at the session. */
export function Timer({
  timer,
  takenAtMs,
}: {
  readonly timer: NonNullable<View['timer']>;
  readonly takenAtMs: number;
}) {
  const now = useNow(!timer.held);
  const leftMs = Math.max(0, timer.leftMs - (timer.held ? 0 : Math.max(0, now - takenAtMs)));
  const share = timer.totalMs > 0 ? Math.min(1, leftMs / timer.totalMs) : 0;
  return (
    <section className={timer.held ? 'timer held' : 'timer'} aria-label={timer.title}>
      <span className="digits" role="timer">
        {leftText(leftMs)}
      </span>{' '}
      <span className="left">{timer.held ? words.held.toLowerCase() : words.left}</span>
      <span className="bar" aria-hidden="true">
        <span style={{ inlineSize: `${share * 100}%` }} />
      </span>
    </section>
  );
}
