import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { VOCABULARY } from '../../record/vocabulary/version.ts';
import type { OfflineList } from '../offline/list.ts';

/** What hears the language that most devices begin with. */
const MODEL = /english.*\.bin$/;
/** Needed by some devices only, and large: kept once they have been asked for. */
const ON_DEMAND = /\.wasm$|libsamplerate|vosk|\.bin$/;

/** Writes into the service worker what it has to keep, so that each build has a service worker of its own. */
export function offlineList(): Plugin {
  let publicDir = '';
  return {
    name: 'offline-list',
    enforce: 'post',
    apply: 'build',
    configResolved(config) {
      publicDir = config.publicDir;
    },
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const hash = createHash('sha256');
        const files: string[] = [];
        for (const [name, output] of Object.entries(bundle)) {
          if (name === 'service-worker.js' || name.endsWith('.map')) continue;
          files.push(name);
          hash.update(name).update(output.type === 'chunk' ? output.code : output.source);
        }
        const copied = readdirSync(publicDir);
        for (const name of copied) hash.update(name).update(readFileSync(join(publicDir, name)));
        const all = [...files, ...copied];
        const list: OfflineList = {
          vocabulary: VOCABULARY,
          version: hash.digest('hex').slice(0, 12),
          page: [
            '/',
            ...all
              .filter(name => !MODEL.test(name) && !ON_DEMAND.test(name) && name !== 'index.html')
              .map(name => `/${name}`),
          ],
          hearing: all.filter(name => MODEL.test(name)).map(name => `/${name}`),
        };
        const worker = bundle['service-worker.js'];
        if (worker?.type !== 'chunk' || !worker.code.includes('__OFFLINE_LIST__'))
          throw new Error('The service worker has no place for its list of files.');
        worker.code = worker.code.replace('__OFFLINE_LIST__', JSON.stringify(list));
      },
    },
  };
}
