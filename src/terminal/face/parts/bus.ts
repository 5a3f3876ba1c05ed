import type { BusView } from '../../../session/view.ts';
import { type Line, line } from '../line.ts';
import { cut, oneLine } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

/** Whether the bus is alive, and what it shows; what is not fresh is a word, never an old number. */
export function busLine({ source, state, values }: BusView, width: number, words: FaceWords): Line {
  const shown =
    state === 'alive'
      ? values.map(({ name, value }) => `${oneLine(name)} ${value === null ? words.noValue : oneLine(value)}`)
      : [oneLine(source)];
  const text = [`${words.bus} ${words.busStates[state]}`, ...shown].join('  ');
  return line(cut(text, width), state === 'silent' || state === 'gone' ? 'bad' : 'normal');
}
