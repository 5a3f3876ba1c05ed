import { words } from '../../words/index.ts';

/** Leaves the screen, below everything else. */
export function Leave({
  label = words.leave,
  note = '',
  onLeave,
  onUnpair,
}: {
  readonly label?: string;
  readonly note?: string;
  readonly onLeave: () => void;
  /** Ends the pairing too, where there is one. */
  readonly onUnpair?: (() => void) | undefined;
}) {
  return (
    <p className="leave">
      <button type="button" onClick={onLeave}>
        {label}
      </button>{' '}
      {note}
      {onUnpair && (
        <>
          {' '}
          <button type="button" onClick={onUnpair}>
            {words.unpair}
          </button>
        </>
      )}
    </p>
  );
}
