import type { PgnCases } from './case.ts';

export const pgn61443: PgnCases = {
  pgn: 61443,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: { acceleratorPedal: 'notAvailable', engineLoad: 'notAvailable' },
    },
    {
      title: 'half pedal, a third of the load',
      data: 'FF 7D 21 FF FF FF FF FF',
      readings: { acceleratorPedal: 50, engineLoad: 33 },
    },
    {
      title: 'FE in each byte: the sensors are faulty',
      data: 'FE FE FE FE FE FE FE FE',
      readings: { acceleratorPedal: 'error', engineLoad: 'error' },
    },
  ],
};
