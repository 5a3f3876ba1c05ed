import 'reflect-metadata';
import { X509Certificate as Certificate, webcrypto } from 'node:crypto';
import { isIP } from 'node:net';
import { join } from 'node:path';
import {
  BasicConstraintsExtension,
  ExtendedKeyUsage,
  ExtendedKeyUsageExtension,
  KeyUsageFlags,
  KeyUsagesExtension,
  PemConverter,
  SubjectAlternativeNameExtension,
  X509CertificateGenerator,
} from '@peculiar/x509';
import { readOwn, writeWhole } from '../state-file.ts';

/** Telephones refuse certificates that are good for longer than 825 days (common practice, from memory). */
const VALID_DAYS = 800;
const DAY_MS = 86_400_000;

export interface ServerCertificate {
  readonly key: string;
  readonly cert: string;
  /** SHA-256 of the certificate, as browsers show it: pairs of digits with colons. */
  readonly fingerprint: string;
}

const asServer = (key: string, cert: string): ServerCertificate => ({
  key,
  cert,
  fingerprint: new Certificate(cert).fingerprint256,
});

const covers = (cert: Certificate, host: string) =>
  (isIP(host) ? cert.checkIP(host) : cert.checkHost(host)) !== undefined;

/** The certificate kept in this folder, while it is good for some days and for all these hosts; else null. */
async function readCertificate(
  keyPath: string,
  certPath: string,
  hosts: readonly string[],
): Promise<ServerCertificate | null> {
  const [key, cert] = [await readOwn(keyPath), await readOwn(certPath)];
  if (key === null || cert === null) return null;
  try {
    const parsed = new Certificate(cert);
    const lasts = Date.parse(parsed.validTo) > Date.now() + DAY_MS;
    return lasts && hosts.every(host => covers(parsed, host)) ? asServer(key, cert) : null;
  } catch {
    // Not a certificate: it is made anew.
    return null;
  }
}

async function makeCertificate(hosts: readonly string[]): Promise<ServerCertificate> {
  const algorithm = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' };
  const keys = await webcrypto.subtle.generateKey(algorithm, true, ['sign', 'verify']);
  const made = await X509CertificateGenerator.createSelfSigned({
    name: 'CN=first-fire',
    notBefore: new Date(Date.now() - DAY_MS),
    notAfter: new Date(Date.now() + VALID_DAYS * DAY_MS),
    signingAlgorithm: algorithm,
    keys,
    extensions: [
      new BasicConstraintsExtension(false, undefined, true),
      new KeyUsagesExtension(KeyUsageFlags.digitalSignature, true),
      new ExtendedKeyUsageExtension([ExtendedKeyUsage.serverAuth]),
      new SubjectAlternativeNameExtension(
        hosts.map(host => ({ type: isIP(host) ? ('ip' as const) : ('dns' as const), value: host })),
      ),
    ],
  });
  const pkcs8 = await webcrypto.subtle.exportKey('pkcs8', keys.privateKey);
  return asServer(PemConverter.encode(pkcs8, 'PRIVATE KEY'), made.toString('pem'));
}

/** The server's certificate for these hosts: the one kept in the folder, or a new one, kept there from now on. */
export async function certificateFor(folder: string, hosts: readonly string[]): Promise<ServerCertificate> {
  const keyPath = join(folder, 'key.pem');
  const certPath = join(folder, 'certificate.pem');
  const kept = await readCertificate(keyPath, certPath, hosts);
  if (kept) return kept;
  const made = await makeCertificate(hosts);
  await writeWhole(keyPath, made.key);
  await writeWhole(certPath, made.cert);
  return made;
}
