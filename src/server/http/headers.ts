import type { FastifyReply, FastifyRequest } from 'fastify';

const common: Readonly<Record<string, string>> = {
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'microphone=(self), screen-wake-lock=(self), camera=(), geolocation=()',
};

/** What the page may load: only from here; WebAssembly for the recognizer, workers, sound made in the page. */
const pagePolicy = (host: string) =>
  [
    "default-src 'self'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "worker-src 'self' blob:",
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "media-src 'self' blob:",
    // Some browsers do not count a socket to the same host as "self".
    `connect-src 'self' wss://${host} data: blob:`,
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');

/** The recognizer that builds its own glue as it starts: in its thread alone, which reaches nothing but this server. */
export const VOSK_POLICY =
  "default-src 'none'; script-src 'self' 'unsafe-eval' 'wasm-unsafe-eval'; connect-src 'self' data: blob:";

/** A report is one file that loads nothing and runs nothing. */
export const REPORT_POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'self'; sandbox";

/** A year. A name of this machine alone is left out: other servers on it may have no HTTPS. */
const STRICT_TRANSPORT = 'max-age=31536000';
const isLoop = (host: string) => /^(localhost|127\.0\.0\.1|\[::1\])(:|$)/.test(host);

/** On every answer. The host is checked next. */
export function secure({ headers, url }: FastifyRequest, reply: FastifyReply): void {
  reply.headers(common);
  if (!reply.hasHeader('content-security-policy'))
    reply.header('content-security-policy', pagePolicy(headers.host ?? ''));
  if (!isLoop(headers.host ?? '')) reply.header('strict-transport-security', STRICT_TRANSPORT);
  if (url.startsWith('/api/')) reply.header('cache-control', 'no-store');
}
