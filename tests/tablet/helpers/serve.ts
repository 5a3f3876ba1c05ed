import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';

export const pageFolder = fileURLToPath(new URL('../../../dist-tablet', import.meta.url));

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
};

export interface Served {
  readonly origin: string;
  /** Bytes of each path that was asked for, compressed where the page has it so, as the laptop sends them. */
  readonly sent: ReadonlyMap<string, number>;
  /** From now on another folder, as after an update. */
  serveFrom(folder: string): void;
  close(): Promise<void>;
}

/** Serves the built page on loopback, which a browser takes for a secure place. */
export async function servePage(folder = pageFolder): Promise<Served> {
  let root = folder;
  const sent = new Map<string, number>();
  const server: Server = createServer(async (request, response) => {
    const path = normalize(new URL(request.url ?? '/', 'http://localhost').pathname);
    const name = path === '/' ? '/index.html' : path;
    try {
      const compressed = await readFile(join(root, `${name}.gz`)).catch(() => null);
      const content = compressed ?? (await readFile(join(root, name)));
      sent.set(name, content.length);
      response.writeHead(200, {
        'content-type': types[extname(name)] ?? 'application/octet-stream',
        ...(compressed ? { 'content-encoding': 'gzip' } : {}),
      });
      response.end(content);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>(resolve => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const address = server.address();
  if (typeof address !== 'object' || address === null) throw new Error('The server has no port.');
  return {
    origin: `http://127.0.0.1:${address.port}`,
    sent,
    serveFrom(other) {
      root = other;
    },
    async close() {
      server.closeAllConnections();
      await new Promise(resolve => {
        server.close(resolve);
      });
    },
  };
}
