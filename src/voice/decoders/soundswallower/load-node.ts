import { stat } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import createModule, { type SoundSwallowerModule } from 'soundswallower';
import { VoiceError } from '../../errors.ts';
import { voiceLanguage } from '../../languages/index.ts';
import type { SpokenLanguage } from '../../ports.ts';
import type { Engine } from './engine.ts';
import { modelFiles } from './model-files.ts';

/** Where the package's model of a language lies. */
export function packagedModel(language: SpokenLanguage = 'en'): string {
  const require = createRequire(import.meta.url);
  const { model } = voiceLanguage(language).hearing;
  return join(dirname(require.resolve('soundswallower')), 'model', model);
}

/**
 * Loads the engine in Node with the packaged model or another one of the same kind.
 * @throws VoiceError `modelUnusable` when a file of the model is missing or empty.
 */
export async function loadEngine(model: string = packagedModel()): Promise<Engine> {
  for (const name of modelFiles) {
    const file = await stat(join(model, name)).catch(() => undefined);
    if (file === undefined || file.size === 0) {
      throw new VoiceError(
        'modelUnusable',
        `The speech model in ${model} has no usable file "${name}"; install the soundswallower package again.`,
      );
    }
  }
  // Read by the package, and needed as an absolute path, but missing from its types.
  const settings: Partial<SoundSwallowerModule> & { modelBase: string } = {
    modelBase: join(model, '..'),
    // What goes wrong is said in one sentence by whoever catches it, not in between on the screen.
    print: () => {},
    printErr: () => {},
  };
  const before = process.listeners('uncaughtException');
  const module = await createModule(settings);
  // The package rethrows whatever nobody caught, with its whole minified source before the message.
  for (const listener of process.listeners('uncaughtException')) {
    if (!before.includes(listener)) process.removeListener('uncaughtException', listener);
  }
  return { module, model };
}
