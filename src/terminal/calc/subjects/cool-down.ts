import { type CoolDown, estimateCoolDown } from '../../../engineering/cool-down.ts';
import { toReadings } from '../readings-text.ts';
import { amount, answer, estimated, type Line, said, subject } from '../subject.ts';

export const coolDown = subject({
  name: 'cooldown',
  summary: 'when a stopped engine will be cool enough for the recheck, and when to look again',
  numbers: {
    ambientC: { flag: 'ambient', quantity: 'temperature', help: 'temperature of the air' },
    recheckC: {
      flag: 'recheck',
      quantity: 'temperature',
      help: 'coolant at which the recheck is safe',
      otherwise: 50,
    },
  },
  words: {},
  pairs: { quantities: ['seconds', 'temperature'], help: 'lines of seconds,temperature since key-off' },
  answer: ({ number, pairs }) =>
    answer(estimateCoolDown(toReadings(pairs), number('ambientC'), number('recheckC')), linesOf),
});

function linesOf(found: CoolDown): readonly Line[] {
  switch (found.state) {
    case 'cool':
      return [said('cool-down', 'cool enough for the recheck')];
    case 'noEstimateYet':
      return [
        said('cool-down', 'no estimate yet'),
        amount('peak', found.peakC, 'temperature'),
        amount('look again in', found.lookAgainS, 'seconds'),
      ];
    case 'cooling':
      return [
        said('cool-down', 'cooling'),
        ...estimated('time left to the recheck', found.left),
        amount('peak', found.peakC, 'temperature'),
        amount('look again in', found.lookAgainS, 'seconds'),
      ];
  }
}
