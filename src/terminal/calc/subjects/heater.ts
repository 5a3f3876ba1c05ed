import { heaterWait, judgeHeaterLamp } from '../../../engineering/intake-heater.ts';
import { amount, answer, fromList, held, subject, together } from '../subject.ts';

export const heater = subject({
  name: 'heater',
  summary: 'how long the wait-to-start lamp should stay on, and whether it outlasts that',
  numbers: {
    temperatureC: {
      flag: 'temperature',
      quantity: 'temperature',
      help: 'of the sensor that the table is for',
    },
    lampOnS: { flag: 'lamp-on', quantity: 'seconds', help: 'how long the lamp was, or has been, on' },
    toleranceS: {
      flag: 'tolerance',
      quantity: 'seconds',
      help: 'by how much it may outlast the table',
      otherwise: 2,
    },
  },
  words: {
    table: {
      flag: 'table',
      help: "the maker's table, temperature:seconds, coldest first, such as -20:30,0:10,20:0",
    },
  },
  answer: ({ number, table }) => {
    const rows = table('table', ['temperature', 'seconds']).map(([temperatureC, seconds]) => ({
      temperatureC,
      seconds,
    }));
    const temperatureC = number('temperatureC');
    const lampOnS = number('lampOnS');
    const wait = answer(fromList(heaterWait(rows, temperatureC), 'table'), seconds => [
      amount('lamp on for', seconds, 'seconds'),
    ]);
    if (lampOnS === undefined) return wait;
    const lamp = judgeHeaterLamp(rows, { temperatureC, lampOnS, toleranceS: number('toleranceS') });
    return together(
      wait,
      answer(lamp, verdict => [held('lamp was on for', verdict, 'seconds')]),
    );
  },
});
