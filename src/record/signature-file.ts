import { readFile, rename, writeFile } from 'node:fs/promises';
import { z } from 'zod';
import { systemCause, systemCode } from '../files/cause.ts';
import { type Signature, SigningError, signatureSchema } from './signing.ts';

/** The file that lies beside a record with the signatures made for it. */
export const signatureFileSchema = z.strictObject({
  format: z.literal('first-fire-signatures/1'),
  signatures: z.array(signatureSchema).max(20),
});

export const signaturePath = (recordPath: string): string => `${recordPath}.sig.json`;

/**
 * The signatures beside a record; none when there is no such file.
 * @throws SigningError when the file is there and cannot be used
 */
export async function readSignatures(recordPath: string): Promise<readonly Signature[]> {
  const path = signaturePath(recordPath);
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return [];
    throw new SigningError(`${path} cannot be read: ${systemCause(error)}.`);
  }
  const parsed = signatureFileSchema.safeParse(parseJson(text));
  if (parsed.success) return parsed.data.signatures;
  const [issue] = parsed.error.issues;
  throw new SigningError(
    `${path} is no file of signatures (${issue?.path.join('.') || 'file'}: ${issue?.message}); sign the record again.`,
  );
}

/**
 * Puts a signature beside a record, in place of an earlier one by the same key in the same role.
 * @throws SigningError when the file cannot be read or written
 */
export async function addSignature(recordPath: string, signature: Signature): Promise<string> {
  const path = signaturePath(recordPath);
  const others = (await readSignatures(recordPath)).filter(
    ({ keyId, role }) => keyId !== signature.keyId || role !== signature.role,
  );
  const file: z.infer<typeof signatureFileSchema> = {
    format: 'first-fire-signatures/1',
    signatures: [...others, signature],
  };
  try {
    // Written whole beside it first, so that a full disk does not cost the signatures that were there.
    await writeFile(`${path}.new`, `${JSON.stringify(file, null, 2)}\n`, { mode: 0o600 });
    await rename(`${path}.new`, path);
  } catch (error) {
    throw new SigningError(`${path} cannot be written: ${systemCause(error)}.`);
  }
  return path;
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
