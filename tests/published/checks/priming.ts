import { fillTimeFactor } from '../../../src/engineering/oil-viscosity.ts';
import { primingTime } from '../../../src/engineering/priming.ts';
import { numberOf, type PublishedCheck, partOf } from '../check.ts';

// The book's pump at half its 1000 1/min and twice that per crank turn, to stay within cranking speeds.
const BOOK_PUMP = {
  pumpLitrePerTurn: (Math.PI / 4) * (0.75 ** 2 - 0.5 ** 2) * 0.25,
  pumpTurnsPerCrankTurn: 2,
  crankingRpm: 500,
  fillSpreadShare: 0,
  leastEfficiency: 0.9,
  greatestEfficiency: 0.9,
  viscosityFactor: 1,
  giveUpMultiple: 1,
};

export const primingChecks: readonly PublishedCheck[] = [
  {
    subject: 'priming',
    source:
      'Esposito, Fluid Power with Applications: gear pump of 75 and 50 mm, 25 mm wide, 90 %, 1000 1/min gives 55.3 litre/min (from memory)',
    quantity: 'time to pump 55.3 litre',
    unit: 's',
    expected: 60,
    tolerance: 0.1,
    compute: () => partOf(primingTime({ ...BOOK_PUMP, fillLitres: 55.3 }), ({ expectedS }) => expectedS),
  },
  {
    subject: 'priming',
    source: 'Hagen-Poiseuille: under a fixed head twice the viscosity gives half the flow',
    quantity: 'factor on the fill time at twice the viscosity at which the pump still fills',
    unit: '',
    expected: 2,
    tolerance: 1e-12,
    compute: () => numberOf(fillTimeFactor({ viscosityMm2S: 4000, fullFlowViscosityMm2S: 2000 })),
  },
];
