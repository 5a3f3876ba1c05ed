import { readWarmUp, type WarmUp } from '../../../engineering/warm-up.ts';
import { toReadings } from '../readings-text.ts';
import { amount, answer, estimated, type Line, said, subject } from '../subject.ts';

export const warmUp = subject({
  name: 'warmup',
  summary: 'when the thermostat will open, or that it has, from readings of the coolant',
  numbers: {
    opensC: {
      flag: 'opens',
      quantity: 'temperature',
      help: 'temperature at which the thermostat begins to open',
    },
    fullyOpenC: {
      flag: 'fully-open',
      quantity: 'temperature',
      help: 'temperature at which it stands fully open',
    },
    toleranceK: {
      flag: 'tolerance',
      quantity: 'temperatureDifference',
      help: 'how far off either may be',
      otherwise: 4,
    },
  },
  words: {},
  pairs: { quantities: ['seconds', 'temperature'], help: 'lines of seconds,temperature' },
  answer: ({ number, pairs }) =>
    answer(
      readWarmUp(toReadings(pairs), {
        opensC: number('opensC'),
        fullyOpenC: number('fullyOpenC'),
        toleranceK: number('toleranceK'),
      }),
      found => [
        ...linesOf(found),
        amount('coolant now', found.coolantC, 'temperature'),
        said('readings set aside as misread', String(found.setAside)),
      ],
    ),
});

function linesOf(found: WarmUp): readonly Line[] {
  switch (found.state) {
    case 'warming':
      return [
        said('warm-up', 'warming, thermostat still shut'),
        ...estimated('time left to the thermostat', found.left),
        amount('time constant', found.curve.tauS, 'seconds'),
      ];
    case 'atThermostat':
      return [said('warm-up', 'warm enough for the thermostat to open; the bend is not to be seen yet')];
    case 'opened':
      return [
        said('warm-up', 'thermostat has opened'),
        amount('opened at second', found.opening.atS, 'seconds'),
        amount('opened at', found.opening.value, 'temperature'),
      ];
    case 'stuckOpenSuspected':
      return [
        said('warm-up', 'THERMOSTAT MAY BE STUCK OPEN, or the load is too small for this cold'),
        amount('levels off at', found.levelsOffC, 'temperature'),
      ];
    case 'stuckShutSuspected':
      return [said('warm-up', 'TOO HOT: THERMOSTAT MAY BE STUCK SHUT, stop the engine')];
  }
}
