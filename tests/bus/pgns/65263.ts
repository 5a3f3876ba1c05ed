import type { PgnCases } from './case.ts';

export const pgn65263: PgnCases = {
  pgn: 65263,
  cases: [
    {
      title: 'all ones: nothing is available',
      data: 'FF FF FF FF FF FF FF FF',
      readings: {
        fuelDeliveryPressure: 'notAvailable',
        oilLevel: 'notAvailable',
        oilPressure: 'notAvailable',
        crankcasePressure: 'notAvailable',
        coolantPressure: 'notAvailable',
        coolantLevel: 'notAvailable',
      },
    },
    {
      title: '280 kPa oil',
      data: 'AF FF FA 46 00 7D 32 FA',
      readings: {
        fuelDeliveryPressure: 700,
        oilLevel: 100,
        oilPressure: 280,
        crankcasePressure: 0,
        coolantPressure: 100,
        coolantLevel: 100,
      },
    },
    {
      title: 'no oil pressure is a value',
      data: 'FF FF FF 00 FF FF FF FF',
      readings: { oilPressure: 0, coolantLevel: 'notAvailable' },
    },
    {
      title: 'error',
      data: 'FE FE FE FE FE FE FE FE',
      readings: {
        fuelDeliveryPressure: 'error',
        oilLevel: 'error',
        oilPressure: 'error',
        crankcasePressure: 'error',
        coolantPressure: 'error',
        coolantLevel: 'error',
      },
    },
  ],
};
