import { judgeHeatSoak } from '../../../engineering/heat-soak.ts';
import { answer, held, subject } from '../subject.ts';

export const heatSoak = subject({
  name: 'heatsoak',
  summary: 'margin to boiling after key-off, under the cap and without it',
  numbers: {
    coolantC: { flag: 'coolant', quantity: 'temperature', help: 'coolant at key-off' },
    soakRiseK: {
      flag: 'rise',
      quantity: 'temperatureDifference',
      help: 'by how much it may still climb; 5 to 15 K is common practice',
      otherwise: 15,
    },
    capKpa: { flag: 'cap', quantity: 'pressure', help: 'gauge pressure that the cap holds' },
    altitudeM: { flag: 'altitude', quantity: 'height', help: 'height above the sea', otherwise: 0 },
    marginK: {
      flag: 'margin',
      quantity: 'temperatureDifference',
      help: 'how far from boiling it has to stay',
      otherwise: 5,
    },
  },
  words: {},
  answer: ({ number }) =>
    answer(
      judgeHeatSoak({
        coolantC: number('coolantC'),
        soakRiseK: number('soakRiseK'),
        capKpa: number('capKpa'),
        altitudeM: number('altitudeM'),
        marginK: number('marginK'),
      }),
      ({ underCap, capOff }) => [
        held('hottest under the cap', underCap, 'temperature'),
        held('now, if the cap came off', capOff, 'temperature'),
      ],
    ),
});
