import { viscosityAt } from '../../../engineering/oil-viscosity.ts';
import { viscosityIndex } from '../../../engineering/viscosity-index.ts';
import { amount, answer, subject, together } from '../subject.ts';

export const viscosity = subject({
  name: 'viscosity',
  summary: 'viscosity of an oil at any temperature, and its viscosity index',
  numbers: {
    viscosity40Mm2S: { flag: 'v40', quantity: 'viscosity', help: 'kinematic viscosity at 40 °C' },
    viscosity100Mm2S: { flag: 'v100', quantity: 'viscosity', help: 'kinematic viscosity at 100 °C' },
    temperatureC: { flag: 'at', quantity: 'temperature', help: 'temperature asked for' },
  },
  words: {},
  answer: ({ number }) => {
    const [v40, v100] = [number('viscosity40Mm2S'), number('viscosity100Mm2S')];
    return together(
      answer(viscosityIndex({ viscosity40Mm2S: v40, viscosity100Mm2S: v100 }), index => [
        amount('viscosity index', index, 'number'),
      ]),
      answer(
        viscosityAt(
          [
            { temperatureC: 40, viscosityMm2S: v40 },
            { temperatureC: 100, viscosityMm2S: v100 },
          ],
          number('temperatureC'),
        ),
        at => [amount('viscosity', at, 'viscosity')],
      ),
    );
  },
});
