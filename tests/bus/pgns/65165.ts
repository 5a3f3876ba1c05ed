import type { PgnCases } from './case.ts';

export const pgn65165: PgnCases = {
  pgn: 65165,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: { secondBatteryVoltage: 'notAvailable' },
    },
    { title: '25.2 V', data: 'F8 01 FF FF FF FF FF FF', readings: { secondBatteryVoltage: 25.2 } },
    { title: 'error', data: '00 FE FE FE FE FE FE FE', readings: { secondBatteryVoltage: 'error' } },
  ],
};
