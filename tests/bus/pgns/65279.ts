import type { PgnCases } from './case.ts';

export const pgn65279: PgnCases = {
  pgn: 65279,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: { waterInFuel: 'notAvailable' },
    },
    { title: 'no water', data: 'FC FF FF FF FF FF FF FF', readings: { waterInFuel: 0 } },
    { title: 'water', data: 'FD FF FF FF FF FF FF FF', readings: { waterInFuel: 1 } },
    { title: 'error', data: 'FE FE FE FE FE FE FE FE', readings: { waterInFuel: 'error' } },
  ],
};
