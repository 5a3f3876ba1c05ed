import { type Fault, sentenceOf } from '../../record/index.ts';
import { fill } from '../../session/wording.ts';
import type { Manner } from '../manner.ts';
import type { SignatureState, Trust } from '../model.ts';
import type { ReplayFault } from '../replay.ts';

/** What is wrong with the chain of a record, in one sentence. */
export const faultText = (fault: Fault | undefined, { words }: Manner): string =>
  fault === undefined ? words.trust.noEntry : sentenceOf(words.findings.chain, fault.finding);

/** Why a signature does not hold; what no table words, as the record's own reader says it. */
export const signatureText = (
  { role, keyId, finding, sentence }: SignatureState,
  { words, name }: Manner,
): string =>
  finding === undefined
    ? sentence
    : fill(words.trust.signatureFails, {
        owner: name.keyOwner(role),
        keyId,
        why: words.findings.signature[finding],
      });

/** Whether the supervisor's own key has signed the record, and the signature holds. */
export const provedByKey = ({ sound, signatures }: Trust): boolean =>
  sound && signatures.some(({ role, valid }) => role === 'supervisor' && valid);

/** What kept the procedure from being carried out once more, or what came out otherwise. */
export function replayText(fault: ReplayFault, { words }: Manner): string {
  const { replay } = words;
  switch (fault.kind) {
    case 'noHeader':
      return replay.noHeader;
    case 'newerVersion':
    case 'olderVersion':
      return fill(replay[fault.kind], { version: String(fault.version) });
    case 'passedUnmet':
      return fill(replay.passedUnmet, { line: String(fault.line), step: fault.step, gate: fault.gate });
    case 'impossible':
      return fill(replay.impossible, { why: fault.why });
    case 'differs': {
      const { kind, ...blanks } = fault.difference;
      return fill(replay.differs, { line: String(fault.line), what: fill(replay[kind], blanks) });
    }
  }
}
