import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    globalSetup: ['tests/set-up.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    coverage: {
      provider: 'v8',
      include: ['src/**', 'machines/**', 'prompts/**'],
      reporter: ['text-summary'],
    },
  },
});
