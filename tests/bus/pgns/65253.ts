import type { PgnCases } from './case.ts';

export const pgn65253: PgnCases = {
  pgn: 65253,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: { engineHours: 'notAvailable' },
    },
    { title: '35.5 h', data: 'C6 02 00 00 FF FF FF FF', readings: { engineHours: 35.5 } },
    { title: 'a new engine', data: '00 00 00 00 00 00 00 00', readings: { engineHours: 0 } },
    { title: 'the largest count', data: 'FF FF FF FA 00 00 00 00', readings: { engineHours: 210554060.75 } },
    { title: 'error', data: '00 00 00 FE FE FE FE FE', readings: { engineHours: 'error' } },
  ],
};
