import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';
import { modelFiles } from '../../voice/recognizers/soundswallower/model-files.ts';
import { modelFolder } from '../hearing/model-folder.ts';

const packageFolder = dirname(createRequire(import.meta.url).resolve('soundswallower'));

/** Puts the recognizer's packaged model beside the page, under a name that changes with its version. */
export const speechModel = (): Plugin => ({
  name: 'speech-model',
  apply: 'build',
  generateBundle() {
    for (const name of modelFiles) {
      this.emitFile({
        type: 'asset',
        fileName: `${modelFolder}/${name}`,
        source: readFileSync(join(packageFolder, 'model', 'en-us', name)),
      });
    }
  },
});
