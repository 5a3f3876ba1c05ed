import type { PgnCases } from './case.ts';

export const pgn65243: PgnCases = {
  pgn: 65243,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: { railPressure: 'notAvailable' },
    },
    { title: '60.05859375 MPa', data: 'FF FF 0F 3C FF FF FF FF', readings: { railPressure: 60058.59375 } },
    { title: 'no pressure is a value', data: 'FF FF 00 00 FF FF FF FF', readings: { railPressure: 0 } },
    { title: 'error', data: 'FE FE 00 FE FE FE FE FE', readings: { railPressure: 'error' } },
  ],
};
