import { defineConfig } from 'vitest/config';

/**
 * Only the tests that hold what is mutated (`MUTANTS_TESTS`, globs apart by semicolons) and no set-up, which would ask for
 * Debian packages that none of them needs.
 */
export default defineConfig({
  test: {
    include: (process.env.MUTANTS_TESTS ?? '').split(';'),
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
