import type { NoteKind } from '../record/vocabulary/index.ts';

const NONE: ReadonlySet<string> = new Set();
const CITED: ReadonlySet<string> = new Set(['source']);
const DESCRIBED: ReadonlySet<string> = new Set(['source', 'why']);

/** The reason of a judgement that a rule made is a name, and concluded; only where no rule could judge is it a sentence. */
const ofJudgement = (data: object) => ('rule' in data ? CITED : DESCRIBED);

const byKind: Partial<Record<NoteKind, (data: object) => ReadonlySet<string>>> = {
  verdict: ofJudgement,
  inTime: ofJudgement,
  doubted: ofJudgement,
  faults: () => new Set(['meaning']),
};

/**
 * Members of a conclusion that explain it to people: a citation, a reason, the meaning of a code. They are worded anew
 * and corrected without anything else being concluded, so a replay does not hold them against what it would say.
 * @param data what the procedure concludes
 */
export const proseIn = (kind: NoteKind, data: object): ReadonlySet<string> => byKind[kind]?.(data) ?? NONE;
