/** The public parts of the record: writing, reading, verifying. Events are a kind and JSON data, nothing more. */

export { systemCause } from '../files/cause.ts';
export { type Entry, entrySchema, FORMAT, OPENED, RECOVERED, REOPENED } from './entry.ts';
export { type ChainProblem, type Fault, faultOf } from './explain.ts';
export { englishFindings, type FindingSentences, type SignatureFinding, sentenceOf } from './findings.ts';
export type { Json, JsonObject } from './json.ts';
export { takeLock } from './lock.ts';
export { type ReadRecord, readLog, type SkimmedRecord, skimBytes } from './log-reader.ts';
export { type Continuation, openNewLog, type ReopenedLog, reopenLog } from './log-writer.ts';
export { RecordError, type RecordErrorCode } from './record-error.ts';
export { readRecordBytes } from './record-file.ts';
export type { RecordLog } from './record-log.ts';
export type { Remark } from './remarks.ts';
export type { RecordClock } from './seal-next.ts';
export { addSignature, readSignatures, signatureFileSchema, signaturePath } from './signature-file.ts';
export {
  checkSignature,
  checkSignedBy,
  makeKeys,
  readPrivateKey,
  readPublicKey,
  type Signature,
  type SignatureCheck,
  SigningError,
  type SigningRole,
  signHash,
  signingRoles,
} from './signing.ts';
export { type Verification, type VerifyOptions, verifyLog } from './verify.ts';
