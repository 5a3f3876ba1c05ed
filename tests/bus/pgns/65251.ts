import type { PgnCases } from './case.ts';

export const pgn65251: PgnCases = {
  pgn: 65251,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: { idleSpeedSetting: 'notAvailable' },
    },
    { title: '700 rpm', data: 'E0 15 FF FF FF FF FF FF', readings: { idleSpeedSetting: 700 } },
    { title: 'error', data: 'FF FE FE FE FE FE FE FE', readings: { idleSpeedSetting: 'error' } },
  ],
};
