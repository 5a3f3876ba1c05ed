import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Plugin } from 'vite';
import { engineFile } from '../hearing/own-model/engine-address.ts';

const require = createRequire(import.meta.url);

/** The engine's thread, as the package carries it: text in base64 that it would turn into a script as it starts. */
function engineSource(): Buffer {
  const file = require.resolve('vosk-browser');
  const packed = /createBase64WorkerFactory\('([A-Za-z0-9+/=]+)'/.exec(readFileSync(file, 'utf8'))?.[1];
  if (packed === undefined) throw new Error(`${file} does not carry its engine as version 0.0.8 does.`);
  return Buffer.from(packed, 'base64');
}

/**
 * Puts the Vosk engine beside the page as a file of its own. It builds code as it starts, which the page's own policy
 * forbids: as a file it has a policy of its own, loads only where it is wanted, and can be ended.
 */
export const voskEngine = (): Plugin => ({
  name: 'vosk-engine',
  apply: 'build',
  generateBundle() {
    this.emitFile({ type: 'asset', fileName: engineFile, source: engineSource() });
  },
});
