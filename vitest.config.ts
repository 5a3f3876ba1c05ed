import { defineConfig } from 'vitest/config';
import { InTurn } from './tests/in-turn.ts';

/** They play and hear sound at its own pace: each alone, when nothing else uses the processor. */
const inRealTime = [
  'tests/terminal/by-microphone.test.ts',
  'tests/voice/audio/capture-source.test.ts',
  'tests/voice/audio/recorders.test.ts',
  'tests/voice/speakers/choose.test.ts',
  'tests/voice/speakers/device-sink.test.ts',
];

/** Each drives a real browser on the built page, which is built for them once. */
const inBrowser = ['tests/tablet/browser/*.test.ts'];

/** Only what hangs is given up: how long a test takes never decides. */
const timeouts = { testTimeout: 900_000, hookTimeout: 900_000 };

export default defineConfig({
  test: {
    globalSetup: ['tests/set-up.ts'],
    maxWorkers: 2,
    sequence: { sequencer: InTurn },
    coverage: {
      provider: 'v8',
      include: ['src/**', 'machines/**', 'prompts/**'],
      reporter: ['text-summary'],
    },
    projects: [
      {
        test: {
          ...timeouts,
          name: 'any time',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: [...inRealTime, ...inBrowser],
          sequence: { groupOrder: 0 },
        },
      },
      {
        test: {
          ...timeouts,
          name: 'in real time',
          // A machine that loses a second now and then loses a word with it.
          retry: 1,
          include: inRealTime,
          fileParallelism: false,
          maxWorkers: 1,
          sequence: { groupOrder: 1 },
        },
      },
      {
        test: {
          name: 'in a browser',
          // Pages hear and speak in real time: a machine that loses a second loses a word with it.
          retry: 1,
          include: inBrowser,
          globalSetup: ['tests/tablet/build-page.ts'],
          testTimeout: 240_000,
          hookTimeout: 240_000,
          sequence: { groupOrder: 0 },
        },
      },
    ],
  },
});
