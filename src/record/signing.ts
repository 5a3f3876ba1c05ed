import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  sign,
  verify,
} from 'node:crypto';
import canonicalize from 'canonicalize';
import { z } from 'zod';
import { HASH, wallMs } from './entry.ts';
import { englishFindings, type SignatureFinding } from './findings.ts';

/** Whose key it is: the bay's, kept at the machine, or the supervisor's own. */
export const signingRoles = ['bay', 'supervisor'] as const;
export type SigningRole = (typeof signingRoles)[number];

/** A key or signature that cannot be used: one sentence. */
export class SigningError extends Error {
  override readonly name = 'SigningError';
}

/** A detached signature over the last hash of a record (Ed25519, RFC 8032). */
export const signatureSchema = z.strictObject({
  role: z.enum(signingRoles),
  /** First 16 hex digits of the SHA-256 of the public key. */
  keyId: z.string().regex(/^[0-9a-f]{16}$/),
  /** The 32 bytes of RFC 8032 as hex digits. */
  publicKey: z.string().regex(/^[0-9a-f]{64}$/),
  /** Hash of the last entry of the record. */
  hash: z.string().regex(HASH),
  at: z.string().refine(at => !Number.isNaN(wallMs(at)), 'must be a UTC time with milliseconds'),
  /** Over everything above; 64 bytes as hex digits. */
  signature: z.string().regex(/^[0-9a-f]{128}$/),
});

export type Signature = z.infer<typeof signatureSchema>;

const RAW_KEY_BYTES = 32;

const rawKey = (key: KeyObject): Buffer =>
  key.export({ type: 'spki', format: 'der' }).subarray(-RAW_KEY_BYTES);

/** RFC 8410, section 4: what stands before the 32 bytes of a public key. */
const SPKI_HEAD = Buffer.from('302a300506032b6570032100', 'hex');

const publicKeyOf = (hex: string): KeyObject =>
  createPublicKey({ key: Buffer.concat([SPKI_HEAD, Buffer.from(hex, 'hex')]), format: 'der', type: 'spki' });

const keyIdOf = (hex: string): string =>
  createHash('sha256').update(Buffer.from(hex, 'hex')).digest('hex').slice(0, 16);

/** A new key pair as PEM texts (PKCS 8 and SPKI), and its id. */
export function makeKeys(): {
  readonly privatePem: string;
  readonly publicPem: string;
  readonly keyId: string;
} {
  const { privateKey, publicKey } = generateKeyPairSync('ed25519');
  return {
    privatePem: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
    publicPem: publicKey.export({ type: 'spki', format: 'pem' }).toString(),
    keyId: keyIdOf(rawKey(publicKey).toString('hex')),
  };
}

function ed25519(make: () => KeyObject, what: string, source: string): KeyObject {
  let key: KeyObject;
  try {
    key = make();
  } catch {
    throw new SigningError(`${source} holds no ${what}; make one with: npm start -- keys make FOLDER.`);
  }
  if (key.asymmetricKeyType !== 'ed25519')
    throw new SigningError(
      `${source} is a key of another kind (${key.asymmetricKeyType}); an Ed25519 key is needed.`,
    );
  return key;
}

/** @throws SigningError when the text is no Ed25519 private key */
export const readPrivateKey = (pem: string, source: string): KeyObject =>
  ed25519(() => createPrivateKey(pem), 'private key', source);

/** The public key in a PEM text, as 64 hex digits. @throws SigningError when it is no Ed25519 key */
export const readPublicKey = (pem: string, source: string): string =>
  rawKey(ed25519(() => createPublicKey(pem), 'public key', source)).toString('hex');

/** What is signed: all members but the signature, in their RFC 8785 form, so that role and time are bound too. */
function message({ signature: _, ...signed }: Signature): Buffer {
  return Buffer.from(`first-fire-signature/1\n${canonicalize(signed) ?? ''}`);
}

/** Ed25519 over these bytes, as 128 hex digits. */
export const signBytes = (bytes: Uint8Array, key: KeyObject): string =>
  sign(null, bytes, key).toString('hex');

/** Whether a signature (128 hex digits) over these bytes was made with this key (64 hex digits); never throws. */
export function verifyBytes(bytes: Uint8Array, publicKey: string, signature: string): boolean {
  try {
    return verify(null, bytes, publicKeyOf(publicKey), Buffer.from(signature, 'hex'));
  } catch {
    return false;
  }
}

/** Signs the last hash of a record. */
export function signHash(hash: string, key: KeyObject, role: SigningRole, at: Date): Signature {
  const publicKey = rawKey(createPublicKey(key)).toString('hex');
  const unsigned: Signature = {
    role,
    keyId: keyIdOf(publicKey),
    publicKey,
    hash,
    at: at.toISOString(),
    signature: '',
  };
  return { ...unsigned, signature: signBytes(message(unsigned), key) };
}

export interface SignatureCheck {
  readonly valid: boolean;
  readonly sentence: string;
  /** Why it does not hold, for who says it in another language. */
  readonly finding?: SignatureFinding;
}

/**
 * Whether a signature belongs to the record with this last hash. It says nothing of whose key it is:
 * for that the key itself has to be known (`checkSignedBy`).
 */
export function checkSignature(own: Signature, lastHash: string): SignatureCheck {
  const bad = (finding: SignatureFinding): SignatureCheck => ({
    valid: false,
    sentence: `The signature of the ${own.role} (key ${own.keyId}) does not hold: ${englishFindings.signature[finding]}.`,
    finding,
  });
  if (keyIdOf(own.publicKey) !== own.keyId) return bad('otherKeyId');
  if (!verifyBytes(message(own), own.publicKey, own.signature)) return bad('altered');
  if (own.hash !== lastHash) return bad('otherRecord');
  return { valid: true, sentence: `Signed with the key ${own.keyId} of the ${own.role} at ${own.at}.` };
}

/** Whether one of the signatures was made with this very key (64 hex digits) for the record with this last hash. */
export function checkSignedBy(
  signatures: readonly Signature[],
  publicKey: string,
  lastHash: string,
): SignatureCheck {
  const own = signatures.filter(signature => signature.publicKey === publicKey);
  const checks = own.map(signature => checkSignature(signature, lastHash));
  const found = checks.find(({ valid }) => valid) ?? checks[0];
  if (found) return found;
  const others = [...new Set(signatures.map(({ keyId }) => keyId))];
  const given = keyIdOf(publicKey);
  return {
    valid: false,
    sentence:
      others.length === 0
        ? `The record is not signed; the key ${given} signed nothing.`
        : `Wrong key: the record is signed with ${others.join(' and ')}, not with the key ${given}.`,
  };
}
