import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/** Runs once before the tests in a browser: they use the page as it is shipped. */
export default async function buildPage(): Promise<void> {
  const configFile = fileURLToPath(new URL('../../vite.tablet.config.ts', import.meta.url));
  await build({ configFile, logLevel: 'error' });
}
