import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/** Runs once before the tests in a browser: they use the page as it is shipped. */
export default async function buildPage(): Promise<void> {
  const configFile = fileURLToPath(new URL('../../vite.tablet.config.ts', import.meta.url));
  const before = process.env.NODE_ENV;
  // Under the name of a test the libraries' slower and larger development halves would be built in.
  process.env.NODE_ENV = 'production';
  try {
    await build({ configFile, logLevel: 'error' });
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
  }
}
