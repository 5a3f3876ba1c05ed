import { useState } from 'react';
import type { View } from '../../session/view.ts';

/** Nothing has to be touched in a hurry: what comes before the answers may push them down. */
const isCalm = ({ state, engine, timer }: View) =>
  (state === 'working' || state === 'held') && engine === 'off' && timer === null;

export interface ProblemsRead {
  /** What nobody has said on this device to have read: it comes before the answers. */
  readonly unread: readonly string[];
  readonly rest: readonly string[];
  /** Changes when what comes before the answers does. */
  readonly layout: string;
  read(): void;
}

/** What does not work, apart by what was read on this device; in a hurry all of it stands below the answers. */
export function useProblems(view: View | null): ProblemsRead {
  const [known, setKnown] = useState<readonly string[]>([]);
  const problems = view?.problems ?? [];
  const unread = view && isCalm(view) ? problems.filter(each => !known.includes(each)) : [];
  return {
    unread,
    rest: problems.filter(each => !unread.includes(each)),
    layout: unread.join('\n'),
    read: () => setKnown([...known, ...unread]),
  };
}
