import type { PgnCases } from './case.ts';

export const pgn65269: PgnCases = {
  pgn: 65269,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: {
        barometricPressure: 'notAvailable',
        ambientTemperature: 'notAvailable',
        airInletTemperature: 'notAvailable',
      },
    },
    {
      title: '101.5 kPa, 21.1875 degC',
      data: 'CB FF FF C6 24 42 FF FF',
      readings: { barometricPressure: 101.5, ambientTemperature: 21.1875, airInletTemperature: 26 },
    },
    {
      title: 'error',
      data: 'FE FE FE 00 FE FE FE FE',
      readings: { barometricPressure: 'error', ambientTemperature: 'error', airInletTemperature: 'error' },
    },
  ],
};
