import type { PgnCases } from './case.ts';

export const pgn65262: PgnCases = {
  pgn: 65262,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: {
        coolantTemperature: 'notAvailable',
        fuelTemperature: 'notAvailable',
        oilTemperature: 'notAvailable',
      },
    },
    {
      title: '58 degC coolant, 20 degC fuel, 58.875 degC oil',
      data: '62 3C 7C 29 FF FF FF FF',
      readings: { coolantTemperature: 58, fuelTemperature: 20, oilTemperature: 58.875 },
    },
    {
      title: 'raw zero is the coldest, not nothing',
      data: '00 00 00 00 FF FF FF FF',
      readings: { coolantTemperature: -40, fuelTemperature: -40, oilTemperature: -273 },
    },
    {
      title: 'the warmest coolant, then one more',
      data: 'FA FB FF FA FF FF FF FF',
      readings: { coolantTemperature: 210, fuelTemperature: 'parameterSpecific', oilTemperature: 1734.96875 },
    },
    {
      title: 'coolant faulty, fuel absent, oil well',
      data: 'FE FF 7C 29 FF FF FF FF',
      readings: { coolantTemperature: 'error', fuelTemperature: 'notAvailable', oilTemperature: 58.875 },
    },
    {
      title: 'error',
      data: 'FE FE 00 FE FE FE FE FE',
      readings: { coolantTemperature: 'error', fuelTemperature: 'error', oilTemperature: 'error' },
    },
  ],
};
