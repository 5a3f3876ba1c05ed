import type { Added } from '../../archive/add-files.ts';
import { SHOWN_DIGITS } from '../../archive/versions.ts';
import { count } from './count.ts';

/** A line for a file that somebody should know about; none for one that was simply added or is there already. */
export function addedLine(added: Added): string | undefined {
  if (added.kind === 'refused') return `Not added: ${added.sentence}`;
  const { intake, decision, source } = added;
  const id = decision.id.slice(0, SHOWN_DIGITS);
  if (decision.kind === 'known') return undefined;
  const notes = [
    ...(intake.state === 'sound' ? [] : [`kept and marked as not verified: ${intake.fault}`]),
    ...(decision.kind === 'longer' ? ['took the place of a shorter version'] : []),
    ...(decision.remark === '' ? [] : [decision.remark]),
  ];
  return notes.length === 0 ? undefined : `${source} (${id}): ${notes.join(' ')}`;
}

interface AddedCounts {
  readonly new: number;
  readonly longer: number;
  readonly known: number;
  readonly refused: number;
  readonly unverified: number;
}

/** What became of all files, and what the archive holds now. */
export function addedSummary(
  counts: AddedCounts,
  total: { readonly sessions: number; readonly unverified: number },
  place: string,
): string[] {
  const { known, longer, refused, unverified } = counts;
  const parts = [
    `${count(counts.new, 'session')} added`,
    ...(longer > 0 ? [`${longer} replaced by a longer version`] : []),
    ...(known > 0 ? [`${known} there already`] : []),
    ...(unverified > 0 ? [`${unverified} not verified`] : []),
    ...(refused > 0 ? [`${count(refused, 'file')} refused`] : []),
  ];
  return [
    `${parts.join(', ')}.`,
    `${place} holds ${count(total.sessions, 'session')}${total.unverified > 0 ? `, ${total.unverified} of them not verified` : ''}.`,
  ];
}
