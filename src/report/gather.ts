import { checkSignature, readLog, readSignatures, SigningError, verifyLog } from '../record/index.ts';
import type { SignatureState } from './model.ts';
import type { SummaryInput } from './summarize.ts';

/**
 * Reads a record and all that tells whether it can be believed.
 * @throws RecordError when it cannot be read, or is not one
 */
export async function gather(log: string): Promise<SummaryInput> {
  const { entries, fault } = await readLog(log);
  const verification = await verifyLog(log);
  const lastHash = entries.at(-1)?.hash ?? '';
  return {
    entries,
    ...(fault ? { fault } : {}),
    remarks: verification.ok ? verification.remarks : [],
    signatures: await signatureStates(log, lastHash),
  };
}

async function signatureStates(log: string, lastHash: string): Promise<SignatureState[]> {
  try {
    const signatures = await readSignatures(log);
    return signatures.map(own => {
      const { role, keyId, at } = own;
      return { role, keyId, at, ...checkSignature(own, lastHash) };
    });
  } catch (error) {
    if (!(error instanceof SigningError)) throw error;
    // Signatures that cannot be read are no reason for silence.
    return [{ role: 'unknown', keyId: '', at: '', valid: false, sentence: error.message }];
  }
}
