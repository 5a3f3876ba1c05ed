import type { JobCard } from '../../machines/context.ts';

/** A name as it is compared: without case, accents, spaces and marks. */
const compared = (name: string) =>
  name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');

/**
 * Why one person on this card cannot stand for two, in one sentence; null where the people differ. The technician
 * has somebody else at the red control and is signed off by somebody else; the second person may be the supervisor, who
 * then sees the start and still signs another's work.
 */
export function bothAreOne({ technician, second, supervisor }: JobCard): string | null {
  if (compared(technician) === compared(second))
    return `"${second}" is technician and second person at once; name somebody else, who stands at the red control.`;
  if (compared(technician) === compared(supervisor))
    return `"${supervisor}" is technician and supervisor at once; name somebody else, who signs the start off.`;
  return null;
}
