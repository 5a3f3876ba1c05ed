import type { LogLine } from '../../../session/view.ts';
import { type Line, line } from '../line.ts';
import { cut, oneLine, pad, widthOf, wrap } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

/** The column of who speaks is as wide as its longest word. */
export function logText({ time, who, text }: LogLine, words: FaceWords): string {
  const width = Math.max(...Object.values(words.who).map(widthOf));
  return `${time} ${pad(words.who[who] ?? who, width)} ${oneLine(text)}`;
}

/** The end of the log, the newest last; what is called out is shown whole where there is room, or from its beginning. */
export function logTail(log: readonly LogLine[], width: number, rows: number, words: FaceWords): Line[] {
  const shown: Line[] = [];
  for (const entry of log.toReversed()) {
    const left = rows - shown.length;
    if (left < 1) break;
    const text = logText(entry, words);
    const isHazard = entry.who === '!';
    const whole = isHazard ? wrap(text, width) : [text];
    const fits =
      whole.length <= left ? whole : [...whole.slice(0, left - 1), whole.slice(left - 1).join(' ')];
    shown.unshift(...fits.map(each => line(cut(each, width), isHazard ? 'bad' : 'faint')));
  }
  return shown;
}
