import { primingTime } from '../../../engineering/priming.ts';
import { amount, answer, subject } from '../subject.ts';

export const priming = subject({
  name: 'priming',
  summary: 'seconds of cranking until oil pressure shows, and when to give up',
  numbers: {
    pumpLitrePerTurn: { flag: 'pump', quantity: 'volume', help: 'volume the oil pump moves per turn' },
    pumpTurnsPerCrankTurn: {
      flag: 'ratio',
      quantity: 'number',
      help: 'turns of the pump per turn of the crankshaft',
      otherwise: 1,
    },
    crankingRpm: { flag: 'speed', quantity: 'speed', help: 'cranking speed' },
    fillLitres: { flag: 'fill', quantity: 'volume', help: 'empty galleries, filter and cooler' },
    fillSpreadShare: {
      flag: 'spread',
      quantity: 'number',
      help: 'how far off that may be, as a share',
      otherwise: 0.25,
    },
    leastEfficiency: {
      flag: 'least-efficiency',
      quantity: 'number',
      help: 'of the pump while cranking',
      otherwise: 0.5,
    },
    greatestEfficiency: {
      flag: 'greatest-efficiency',
      quantity: 'number',
      help: 'of the pump while cranking',
      otherwise: 0.9,
    },
    viscosityFactor: {
      flag: 'thick-oil',
      quantity: 'number',
      help: 'how many times longer this oil takes',
      otherwise: 1,
    },
    giveUpMultiple: {
      flag: 'give-up',
      quantity: 'number',
      help: 'give up at this multiple of the expected time',
      otherwise: 2,
    },
  },
  words: {},
  answer: ({ number }) =>
    answer(
      primingTime({
        pumpLitrePerTurn: number('pumpLitrePerTurn'),
        pumpTurnsPerCrankTurn: number('pumpTurnsPerCrankTurn'),
        crankingRpm: number('crankingRpm'),
        fillLitres: number('fillLitres'),
        fillSpreadShare: number('fillSpreadShare'),
        leastEfficiency: number('leastEfficiency'),
        greatestEfficiency: number('greatestEfficiency'),
        viscosityFactor: number('viscosityFactor'),
        giveUpMultiple: number('giveUpMultiple'),
      }),
      ({ earliestS, expectedS, latestS, giveUpS }) => [
        amount('pressure at the earliest after', earliestS, 'seconds'),
        amount('pressure expected after', expectedS, 'seconds'),
        amount('pressure at the latest after', latestS, 'seconds'),
        amount('give up after', giveUpS, 'seconds'),
      ],
    ),
});
