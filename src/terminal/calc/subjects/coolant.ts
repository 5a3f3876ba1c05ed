import { planMix } from '../../../engineering/coolant.ts';
import { freezePoint, shareForNight } from '../../../engineering/glycol.ts';
import { amount, answer, subject, together } from '../subject.ts';
import { GLYCOL_OPTION, glycolOf } from './glycol-option.ts';

export const coolant = subject({
  name: 'coolant',
  summary: 'share of glycol for the coldest night, and what to drain and add for it',
  numbers: {
    nightLowC: { flag: 'low', quantity: 'temperature', help: 'coldest night expected' },
    marginK: {
      flag: 'margin',
      quantity: 'temperatureDifference',
      help: 'by how much the freezing point is to lie below that night',
      otherwise: 5,
    },
    systemLitres: { flag: 'system', quantity: 'volume', help: 'volume of the cooling system' },
    inSystemLitres: { flag: 'in-system', quantity: 'volume', help: 'coolant already in it', otherwise: 0 },
    inSystemShare: { flag: 'in-system-share', quantity: 'number', help: 'share of glycol in that, 0 to 1' },
    concentrateShare: {
      flag: 'concentrate',
      quantity: 'number',
      help: 'share of glycol in the can, 0 to 1',
      otherwise: 1,
    },
  },
  words: { glycol: GLYCOL_OPTION },
  answer: ({ number, words }) => {
    const glycol = glycolOf(words('glycol'));
    const share = shareForNight(glycol, { nightLowC: number('nightLowC'), marginK: number('marginK') });
    const need = together(
      answer(share, value => [amount('share of glycol by volume', value, 'number')]),
      answer(share.ok ? freezePoint(glycol, share.value) : share, value => [
        amount('freezes at', value, 'temperature'),
      ]),
    );
    if (!share.ok || number('systemLitres') === undefined) return need;
    const plan = planMix({
      systemLitres: number('systemLitres'),
      inSystemLitres: number('inSystemLitres'),
      inSystemShare: number('inSystemShare'),
      concentrateShare: number('concentrateShare'),
      wantedShare: share.value,
    });
    return together(
      need,
      answer(plan, ({ drainLitres, concentrateLitres, waterLitres }) => [
        amount('drain', drainLitres, 'volume'),
        amount('add concentrate', concentrateLitres, 'volume'),
        amount('add water', waterLitres, 'volume'),
      ]),
    );
  },
});
