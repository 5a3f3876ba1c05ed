import 'reflect-metadata';
import { X509Certificate as Certificate, webcrypto } from 'node:crypto';
import { join } from 'node:path';
import {
  BasicConstraintsExtension,
  KeyUsageFlags,
  KeyUsagesExtension,
  PemConverter,
  SubjectKeyIdentifierExtension,
  X509Certificate,
  X509CertificateGenerator,
} from '@peculiar/x509';
import { z } from 'zod';
import { readJson, writeWhole } from '../state-file.ts';
import { nameConstraints, type Permitted, permits, permittedFor } from './name-constraints.ts';

const DAY_MS = 86_400_000;
const VALID_DAYS = 3650;
/** With less left than a server's certificate is good for, there is time enough to bring devices a new one. */
const RENEW_DAYS = 30;

export const ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' };

const fileSchema = z.object({
  /** PKCS #8 in PEM. */
  key: z.string(),
  cert: z.string(),
  names: z.array(z.string()),
  ranges: z.array(z.string()),
});

/** The shop's own authority: devices that trust it trust its server, and it can vouch for nothing in the world at large. */
export interface Authority {
  readonly key: CryptoKey;
  readonly cert: X509Certificate;
  /** The certificate as devices take it in: DER. */
  readonly der: Uint8Array;
  /** SHA-256 of it, pairs of digits with colons. */
  readonly fingerprint: string;
  mayVouchFor(host: string): boolean;
}

type CryptoKey = webcrypto.CryptoKey;

function authorityOf(key: CryptoKey, pem: string, permitted: Permitted): Authority {
  const { raw, fingerprint256 } = new Certificate(pem);
  return {
    key,
    cert: new X509Certificate(pem),
    der: raw,
    fingerprint: fingerprint256,
    mayVouchFor: host => permits(permitted, host),
  };
}

async function readAuthority(path: string): Promise<Authority | null> {
  const kept = await readJson(path, fileSchema);
  if (kept === null) return null;
  try {
    if (Date.parse(new Certificate(kept.cert).validTo) < Date.now() + RENEW_DAYS * DAY_MS) return null;
    const pkcs8 = PemConverter.decodeFirst(kept.key);
    const key = await webcrypto.subtle.importKey('pkcs8', pkcs8, ALGORITHM, false, ['sign']);
    return authorityOf(key, kept.cert, kept);
  } catch {
    // Not a key, or not a certificate: it is made anew.
    return null;
  }
}

async function makeAuthority(path: string, hosts: readonly string[]): Promise<Authority> {
  const keys = await webcrypto.subtle.generateKey(ALGORITHM, true, ['sign', 'verify']);
  const permitted = permittedFor(hosts);
  const made = await X509CertificateGenerator.createSelfSigned({
    // Told apart by its time, where a device knows those of two shops.
    name: `CN=first-fire ${new Date().toISOString().slice(0, 10)}`,
    notBefore: new Date(Date.now() - DAY_MS),
    notAfter: new Date(Date.now() + VALID_DAYS * DAY_MS),
    signingAlgorithm: ALGORITHM,
    keys,
    extensions: [
      new BasicConstraintsExtension(true, 0, true),
      new KeyUsagesExtension(KeyUsageFlags.keyCertSign | KeyUsageFlags.cRLSign, true),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
      nameConstraints(permitted),
    ],
  });
  const key = PemConverter.encode(await webcrypto.subtle.exportKey('pkcs8', keys.privateKey), 'PRIVATE KEY');
  const cert = made.toString('pem');
  await writeWhole(path, JSON.stringify({ key, cert, ...permitted }));
  return authorityOf(keys.privateKey, cert, permitted);
}

/** The authority that is kept in this folder; made on the first run, for this machine's private addresses and names. */
export async function authorityFor(folder: string, hosts: readonly string[]): Promise<Authority> {
  const path = join(folder, 'authority.json');
  return (await readAuthority(path)) ?? makeAuthority(path, hosts);
}
