import type { PgnCases } from './case.ts';

export const pgn65276: PgnCases = {
  pgn: 65276,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: { fuelLevel: 'notAvailable', secondFuelLevel: 'notAvailable' },
    },
    {
      title: '63.2 percent',
      data: 'FF 9E FF FF FF FF 00 FF',
      readings: { fuelLevel: 63.2, secondFuelLevel: 0 },
    },
    {
      title: 'error',
      data: 'FE FE FE FE FE FE FE FE',
      readings: { fuelLevel: 'error', secondFuelLevel: 'error' },
    },
  ],
};
