import { type IdleState, judgeIdle } from '../../../engineering/idle.ts';
import { toReadings } from '../readings-text.ts';
import { amount, answer, held, said, subject } from '../subject.ts';

const STATES: Readonly<Record<IdleState, string>> = {
  inRangeSteady: 'in range and steady',
  outOfRange: 'OUT OF RANGE',
  hunting: 'HUNTING',
  falling: 'FALLING',
  rising: 'RISING',
};

const NAMES = ['mean', 'last reading', 'scatter', 'drift over the window'];

export const idle = subject({
  name: 'idle',
  summary: 'whether the idle is in range and steady, from readings of its speed',
  numbers: {
    minRpm: { flag: 'min', quantity: 'speed', help: 'least speed allowed' },
    maxRpm: { flag: 'max', quantity: 'speed', help: 'greatest speed allowed' },
    maxScatterRpm: {
      flag: 'scatter',
      quantity: 'speed',
      help: 'greatest standard deviation about the trend',
      otherwise: 15,
    },
    maxDriftRpm: { flag: 'drift', quantity: 'speed', help: 'greatest drift over the window', otherwise: 30 },
    windowS: { flag: 'window', quantity: 'seconds', help: 'the last seconds that are judged', otherwise: 20 },
  },
  words: {},
  pairs: { quantities: ['seconds', 'speed'], help: 'lines of seconds,rpm' },
  answer: ({ number, pairs }) =>
    answer(
      judgeIdle(toReadings(pairs), {
        minRpm: number('minRpm'),
        maxRpm: number('maxRpm'),
        maxScatterRpm: number('maxScatterRpm'),
        maxDriftRpm: number('maxDriftRpm'),
        windowS: number('windowS'),
      }),
      ({ state, verdicts, peakToPeakRpm }) => [
        said('idle', STATES[state]),
        ...verdicts.map((verdict, i) => held(NAMES[i] ?? '', verdict, 'speed')),
        amount('peak to peak', peakToPeakRpm, 'speed'),
      ],
    ),
});
