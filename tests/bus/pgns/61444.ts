import type { PgnCases } from './case.ts';

export const pgn61444: PgnCases = {
  pgn: 61444,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: { engineSpeed: 'notAvailable', starterMode: 'notAvailable' },
    },
    {
      title: '650 rpm, start finished',
      data: 'FF FF FF 50 14 FF F3 FF',
      readings: { engineSpeed: 650, starterMode: 3 },
    },
    {
      title: 'standing still is a value, not an absence',
      data: 'FF FF FF 00 00 FF F0 FF',
      readings: { engineSpeed: 0, starterMode: 0 },
    },
    {
      title: 'the largest speed',
      data: 'FF FF FF FF FA FF FC FF',
      readings: { engineSpeed: 8031.875, starterMode: 12 },
    },
    {
      title: 'one past the largest speed is parameter specific',
      data: 'FF FF FF 00 FB FF FF FF',
      readings: { engineSpeed: 'parameterSpecific', starterMode: 'notAvailable' },
    },
    {
      title: 'a reserved number counts as an error',
      data: 'FF FF FF 00 FC FF FD FF',
      readings: { engineSpeed: 'error', starterMode: 'error' },
    },
    {
      title: 'the error numbers',
      data: 'FE FE FE 00 FE FE FE FE',
      readings: { engineSpeed: 'error', starterMode: 'error' },
    },
    {
      title: 'a message cut short holds nothing',
      data: 'FF FF FF 50',
      readings: { engineSpeed: 'notAvailable', starterMode: 'notAvailable' },
    },
  ],
};
