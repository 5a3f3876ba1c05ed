import {
  checkSignature,
  faultOf,
  RecordError,
  readLog,
  readSignatures,
  SigningError,
  type VerifyOptions,
  verifyLog,
} from '../record/index.ts';
import type { SignatureState } from './model.ts';
import type { SummaryInput } from './summarize.ts';

/**
 * Reads a record and all that tells whether it can be believed.
 * @param options with a hash that is known to belong to the record, so that nobody can have chained it anew or cut it
 * @throws RecordError when it cannot be read, or is not one, or the hash is none
 */
export async function gather(log: string, options: VerifyOptions = {}): Promise<SummaryInput> {
  const { entries, ...read } = await readLog(log);
  const verification = await verifyLog(log, options);
  if (!verification.ok && verification.problem === 'unreadable')
    throw new RecordError('unreadable', verification.sentence);
  const fault =
    read.fault ?? (verification.ok ? undefined : faultOf({ found: 'cutOff', line: entries.length + 1 }));
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
