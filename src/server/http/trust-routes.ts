import type { FastifyInstance } from 'fastify';
import type { ServerCertificate } from '../tls/certificate.ts';
import { CERTIFICATE_PATH, languageOf, trustPage } from '../trust/page.ts';

/** It loads nothing and runs nothing. */
const POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/**
 * `GET /trust`: how a device comes to trust the laptop, and the certificate of its authority. For everybody on the
 * network: there is nothing secret in it, and a device has to trust before it can be paired without a warning.
 */
export function trustRoutes(
  app: FastifyInstance,
  { der, fingerprint }: ServerCertificate['authority'],
): void {
  app.get('/trust', (request, reply) =>
    reply
      .header('content-security-policy', POLICY)
      .header('cache-control', 'no-store')
      .type('text/html; charset=utf-8')
      .send(trustPage(fingerprint, languageOf(request.headers['accept-language']))),
  );
  app.get(CERTIFICATE_PATH, (_request, reply) =>
    reply
      .header('cache-control', 'no-store')
      // By this type a telephone offers to take it in.
      .type('application/x-x509-ca-cert')
      .send(Buffer.from(der)),
  );
}
