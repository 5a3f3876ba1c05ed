import type { PgnCases } from './case.ts';

export const pgn65271: PgnCases = {
  pgn: 65271,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: {
        batteryCurrent: 'notAvailable',
        alternatorCurrent: 'notAvailable',
        chargingVoltage: 'notAvailable',
        batteryVoltage: 'notAvailable',
        keySwitchVoltage: 'notAvailable',
      },
    },
    {
      title: '13.85 V at battery and key, 10 A into the battery',
      data: '87 28 20 01 15 01 15 01',
      readings: {
        batteryCurrent: 10,
        alternatorCurrent: 40,
        chargingVoltage: 14.4,
        batteryVoltage: 13.85,
        keySwitchVoltage: 13.85,
      },
    },
    {
      title: 'current out of the battery',
      data: '00 FF FF FF FF FF FF FF',
      readings: { batteryCurrent: -125, batteryVoltage: 'notAvailable' },
    },
    {
      title: 'error',
      data: 'FE FE 00 FE 00 FE 00 FE',
      readings: {
        batteryCurrent: 'error',
        alternatorCurrent: 'error',
        chargingVoltage: 'error',
        batteryVoltage: 'error',
        keySwitchVoltage: 'error',
      },
    },
  ],
};
