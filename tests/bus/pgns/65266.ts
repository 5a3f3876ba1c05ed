import type { PgnCases } from './case.ts';

export const pgn65266: PgnCases = {
  pgn: 65266,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: { fuelRate: 'notAvailable' },
    },
    { title: '2.4 l/h', data: '30 00 FF FF FF FF FF FF', readings: { fuelRate: 2.4 } },
    { title: 'error', data: '00 FE FE FE FE FE FE FE', readings: { fuelRate: 'error' } },
  ],
};
