import { blendForNight, fillTank, gellingRisk } from '../../../engineering/fuel.ts';
import { amount, answer, said, subject, together } from '../subject.ts';

const RISKS = {
  clear: 'clear of the cloud point',
  nearCloud: 'nearer to the cloud point than the margin',
  belowCloud: 'below the cloud point: wax forms, filters may plug',
  belowPour: 'below the pour point: the fuel may set',
} as const;

export const fuel = subject({
  name: 'fuel',
  summary: 'share of No. 1 fuel for the coldest night, and litres for a tank with --tank',
  numbers: {
    nightLowC: { flag: 'low', quantity: 'temperature', help: 'coldest night expected' },
    no1CloudC: {
      flag: 'no1-cloud',
      quantity: 'temperature',
      help: 'cloud point of the No. 1, from the supplier',
    },
    no2CloudC: {
      flag: 'no2-cloud',
      quantity: 'temperature',
      help: 'cloud point of the No. 2, from the supplier',
    },
    marginK: {
      flag: 'margin',
      quantity: 'temperatureDifference',
      help: 'by how much the cloud point is to lie below that night',
      otherwise: 3,
    },
    tankLitres: { flag: 'tank', quantity: 'volume', help: 'level to fill the tank to' },
    inTankLitres: { flag: 'in-tank', quantity: 'volume', help: 'fuel already in the tank', otherwise: 0 },
    inTankCloudC: {
      flag: 'in-tank-cloud',
      quantity: 'temperature',
      help: 'its cloud point; that of the No. 2 if left out',
    },
  },
  words: {},
  answer: ({ number }) => {
    const fuels = {
      no1CloudC: number('no1CloudC'),
      no2CloudC: number('no2CloudC'),
      nightLowC: number('nightLowC'),
      marginK: number('marginK'),
    };
    const tankLitres = number('tankLitres');
    const straight = answer(gellingRisk({ ...fuels, cloudC: fuels.no2CloudC }), risk => [
      said('No. 2 alone', RISKS[risk]),
    ]);
    if (tankLitres === undefined) {
      return together(
        straight,
        answer(blendForNight(fuels), ({ no1Share, cloudC }) => [
          amount('share of No. 1 by volume', no1Share, 'number'),
          amount('cloud point of the blend', cloudC, 'temperature'),
        ]),
      );
    }
    const inTank = {
      tankLitres,
      inTankLitres: number('inTankLitres'),
      inTankCloudC: number('inTankCloudC') ?? fuels.no2CloudC,
    };
    return together(
      straight,
      answer(fillTank({ ...fuels, ...inTank }), plan => [
        amount('No. 1 to add', plan.no1Litres, 'volume'),
        amount('No. 2 to add', plan.no2Litres, 'volume'),
        amount('cloud point of the full tank', plan.cloudC, 'temperature'),
      ]),
    );
  },
});
