import { type StarterHistory, starterState, starterWait } from '../../../engineering/starter.ts';
import { amount, answer, subject, together } from '../subject.ts';
import { UsageError } from '../usage-error.ts';

export const starter = subject({
  name: 'starter',
  summary: 'how long the starter may crank now, and how long it has to rest before a burst',
  numbers: {
    ambientC: { flag: 'ambient', quantity: 'temperature', help: 'temperature of the air' },
    longestBurstS: {
      flag: 'longest',
      quantity: 'seconds',
      help: 'longest burst from cold at the rated temperature',
    },
    ratedAmbientC: {
      flag: 'rated-ambient',
      quantity: 'temperature',
      help: 'that rated temperature',
      otherwise: 25,
    },
    limitC: {
      flag: 'limit',
      quantity: 'temperature',
      help: 'hottest that its windings may get',
      otherwise: 180,
    },
    timeConstantS: {
      flag: 'time-constant',
      quantity: 'seconds',
      help: 'time in which it sheds 63 % of its heat',
    },
    wantedS: { flag: 'want', quantity: 'seconds', help: 'burst that is wanted next' },
  },
  words: { history: { flag: 'history', help: 'bursts and rests so far, such as crank:15,rest:60,crank:10' } },
  answer: ({ number, words }) => {
    const motor = {
      limitC: number('limitC'),
      longestBurstS: number('longestBurstS'),
      ratedAmbientC: number('ratedAmbientC'),
      timeConstantS: number('timeConstantS'),
    };
    const history = historyOf(words('history'));
    const ambientC = number('ambientC');
    const now = answer(starterState(motor, ambientC, history), ({ temperatureC, nextBurstS }) => [
      amount('windings now', temperatureC, 'temperature'),
      amount('may crank now for', nextBurstS, 'seconds'),
    ]);
    const wantedS = number('wantedS');
    if (wantedS === undefined) return now;
    return together(
      now,
      answer(starterWait(motor, ambientC, history, wantedS), waitS => [
        amount('rest before the burst', waitS, 'seconds'),
      ]),
    );
  },
});

function historyOf(text: string | undefined): StarterHistory {
  if (text === undefined) return [];
  return text.split(',').map(cell => {
    const [, kind, digits] = /^\s*(crank|rest)\s*:\s*(\d+(?:\.\d+)?)\s*s?\s*$/i.exec(cell) ?? [];
    if (kind === undefined || digits === undefined) {
      throw new UsageError(`--history has to be bursts and rests such as crank:15,rest:60, not "${cell}".`);
    }
    return { cranking: kind.toLowerCase() === 'crank', seconds: Number(digits) };
  });
}
