import { judgeOilPressure } from '../../../engineering/oil-pressure.ts';
import { answer, held, subject } from '../subject.ts';

export const oilPressure = subject({
  name: 'oilpressure',
  summary: 'oil pressure held against the least allowed at its speed and oil temperature',
  numbers: {
    pressureKpa: { flag: 'pressure', quantity: 'pressure', help: 'gauge pressure read' },
    speedRpm: { flag: 'speed', quantity: 'speed', help: 'engine speed' },
    oilC: { flag: 'oil', quantity: 'temperature', help: 'oil temperature' },
    floorOilC: {
      flag: 'floor-oil',
      quantity: 'temperature',
      help: 'hottest oil that the floor holds for',
      otherwise: 110,
    },
  },
  words: {
    floorKpa: {
      flag: 'floor',
      help: 'least pressures, speed:pressure, slowest first, such as 700:80,1500:180',
    },
  },
  answer: ({ number, table }) => {
    const floorKpa = table('floorKpa', ['speed', 'pressure']);
    return answer(
      judgeOilPressure(number('pressureKpa'), { speedRpm: number('speedRpm'), oilC: number('oilC') }, [
        { oilC: number('floorOilC') ?? Number.NaN, floorKpa },
      ]),
      verdict => [held('oil pressure', verdict, 'pressure')],
    );
  },
});
