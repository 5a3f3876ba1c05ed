import { isBuiltin } from 'node:module';
import type { Plugin } from 'vite';

/** Ends the build where the page would need a Node module, naming who imports it. */
export const refuseNode = (): Plugin => ({
  name: 'refuse-node',
  enforce: 'pre',
  resolveId(source, importer) {
    if (!isBuiltin(source)) return null;
    // Packages ask for them behind a check of their surroundings; our own code never may.
    if (importer?.includes('node_modules')) return null;
    return this.error(`${importer ?? 'An entry'} imports ${source}, which a browser does not have.`);
  },
});
