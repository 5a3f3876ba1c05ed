import 'reflect-metadata';
import { X509Certificate as Certificate, webcrypto } from 'node:crypto';
import { isIP } from 'node:net';
import { join } from 'node:path';
import {
  AuthorityKeyIdentifierExtension,
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
import { ALGORITHM, type Authority, authorityFor } from './authority.ts';

/** Telephones refuse certificates that are good for longer than 825 days (common practice, from memory). */
const VALID_DAYS = 800;
const DAY_MS = 86_400_000;

export interface ServerCertificate {
  readonly key: string;
  readonly cert: string;
  /** SHA-256 of the certificate, as browsers show it: pairs of digits with colons. */
  readonly fingerprint: string;
  /** What has to be known to a device that is to trust it. */
  readonly authority: Pick<Authority, 'der' | 'fingerprint'>;
  /** Addresses of this machine that the authority may not vouch for: it was made when they were others. */
  readonly untrusted: readonly string[];
}

const covers = (cert: Certificate, host: string) =>
  (isIP(host) ? cert.checkIP(host) : cert.checkHost(host)) !== undefined;

type Pair = Pick<ServerCertificate, 'key' | 'cert'>;

/** The certificate kept in this folder, while it is this authority's, good for some days and for all these hosts; else null. */
async function readCertificate(
  keyPath: string,
  certPath: string,
  hosts: readonly string[],
  authority: Authority,
): Promise<Pair | null> {
  const [key, cert] = [await readOwn(keyPath), await readOwn(certPath)];
  if (key === null || cert === null) return null;
  try {
    const parsed = new Certificate(cert);
    const lasts = Date.parse(parsed.validTo) > Date.now() + DAY_MS;
    const isOurs = parsed.verify(new Certificate(authority.der).publicKey);
    return isOurs && lasts && hosts.every(host => covers(parsed, host)) ? { key, cert } : null;
  } catch {
    // Not a certificate: it is made anew.
    return null;
  }
}

async function makeCertificate(hosts: readonly string[], authority: Authority): Promise<Pair> {
  const keys = await webcrypto.subtle.generateKey(ALGORITHM, true, ['sign', 'verify']);
  const made = await X509CertificateGenerator.create({
    subject: 'CN=first-fire server',
    issuer: authority.cert.subject,
    notBefore: new Date(Date.now() - DAY_MS),
    notAfter: new Date(Date.now() + VALID_DAYS * DAY_MS),
    signingAlgorithm: ALGORITHM,
    signingKey: authority.key,
    publicKey: keys.publicKey,
    extensions: [
      new BasicConstraintsExtension(false, undefined, true),
      new KeyUsagesExtension(KeyUsageFlags.digitalSignature, true),
      new ExtendedKeyUsageExtension([ExtendedKeyUsage.serverAuth]),
      await AuthorityKeyIdentifierExtension.create(authority.cert),
      new SubjectAlternativeNameExtension(
        hosts.map(host => ({ type: isIP(host) ? ('ip' as const) : ('dns' as const), value: host })),
      ),
    ],
  });
  const pkcs8 = await webcrypto.subtle.exportKey('pkcs8', keys.privateKey);
  return { key: PemConverter.encode(pkcs8, 'PRIVATE KEY'), cert: made.toString('pem') };
}

/**
 * The server's certificate for those of these hosts that the shop's authority may vouch for: the one kept in the
 * folder, or a new one, kept there from now on.
 */
export async function certificateFor(folder: string, hosts: readonly string[]): Promise<ServerCertificate> {
  const authority = await authorityFor(folder, hosts);
  const own = hosts.filter(host => authority.mayVouchFor(host));
  const keyPath = join(folder, 'key.pem');
  const certPath = join(folder, 'certificate.pem');
  const kept = await readCertificate(keyPath, certPath, own, authority);
  const { key, cert } = kept ?? (await makeCertificate(own, authority));
  if (!kept) {
    await writeWhole(keyPath, key);
    await writeWhole(certPath, cert);
  }
  return {
    key,
    cert,
    fingerprint: new Certificate(cert).fingerprint256,
    authority: { der: authority.der, fingerprint: authority.fingerprint },
    untrusted: hosts.filter(host => !authority.mayVouchFor(host)),
  };
}
