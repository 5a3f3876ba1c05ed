import type { PgnCases } from './case.ts';

export const pgn65252: PgnCases = {
  pgn: 65252,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: {
        waitToStartLamp: 'notAvailable',
        protectionHasShutDown: 'notAvailable',
        protectionNearShutdown: 'notAvailable',
      },
    },
    {
      title: 'lamp on',
      data: 'FF FF FF FD F0 FF FF FF',
      readings: { waitToStartLamp: 1, protectionHasShutDown: 0, protectionNearShutdown: 0 },
    },
    {
      title: 'lamp off, shut down by protection',
      data: 'FF FF FF FC F5 FF FF FF',
      readings: { waitToStartLamp: 0, protectionHasShutDown: 1, protectionNearShutdown: 1 },
    },
    {
      title: 'error',
      data: 'AA AA AA AA AA AA AA AA',
      readings: { waitToStartLamp: 'error', protectionHasShutDown: 'error', protectionNearShutdown: 'error' },
    },
  ],
};
