import type { NoteKind } from '../record/vocabulary/index.ts';

const ofJudgement: ReadonlySet<string> = new Set(['source', 'why']);

const byKind: Partial<Record<NoteKind, ReadonlySet<string>>> = {
  verdict: ofJudgement,
  inTime: ofJudgement,
  doubted: ofJudgement,
  faults: new Set(['meaning']),
};

/**
 * Members of a conclusion that explain it to people: a citation, a reason, the meaning of a code. They are worded anew
 * and corrected without anything else being concluded, so a replay does not hold them against what it would say.
 */
export const proseIn = (kind: NoteKind): ReadonlySet<string> => byKind[kind] ?? new Set();
