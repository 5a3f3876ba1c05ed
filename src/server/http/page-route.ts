import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import { VOSK_POLICY } from './headers.ts';

const NOT_BUILT = 'The page has not been built; run "npm run build:tablet", then load this again.';

/** The page that was built into this folder; without it, how to build it. */
export function pageRoute(app: FastifyInstance, folder: string): void {
  if (!existsSync(join(folder, 'index.html'))) {
    app.get('/', (_request, reply) => reply.code(503).type('text/plain; charset=utf-8').send(NOT_BUILT));
    return;
  }
  app.register(fastifyStatic, {
    root: folder,
    dotfiles: 'deny',
    // The build puts a compressed copy beside each file.
    preCompressed: true,
    cacheControl: false,
    setHeaders: (reply, sent) => {
      const path = sent.replace(/\.gz$/, '');
      // Files named by their content never change; all others are asked for anew.
      const named = /[/\\]assets[/\\][^/\\]+-[\w-]{8,}(?:\.\w+)+$/.test(path);
      if (/[/\\]vosk[/\\][^/\\]+\.js$/.test(path)) reply.header('content-security-policy', VOSK_POLICY);
      reply.header('cache-control', named ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
}
