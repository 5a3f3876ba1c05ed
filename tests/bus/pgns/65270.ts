import type { PgnCases } from './case.ts';

export const pgn65270: PgnCases = {
  pgn: 65270,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: {
        boostPressure: 'notAvailable',
        intakeTemperature: 'notAvailable',
        intakePressure: 'notAvailable',
      },
    },
    {
      title: '46 degC',
      data: 'FF 00 56 1F FF FF FF FF',
      readings: { boostPressure: 0, intakeTemperature: 46, intakePressure: 62 },
    },
    {
      title: 'error',
      data: 'FE FE FE FE FE FE FE FE',
      readings: { boostPressure: 'error', intakeTemperature: 'error', intakePressure: 'error' },
    },
  ],
};
