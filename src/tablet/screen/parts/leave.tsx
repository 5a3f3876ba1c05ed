import { words } from '../../words.ts';

/** Leaves the screen, below everything else. */
export function Leave({
  label = words.leave,
  note = '',
  onLeave,
}: {
  readonly label?: string;
  readonly note?: string;
  readonly onLeave: () => void;
}) {
  return (
    <p className="leave">
      <button type="button" onClick={onLeave}>
        {label}
      </button>{' '}
      {note}
    </p>
  );
}
