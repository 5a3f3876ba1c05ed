import type { LogLine } from '../../../session/view.ts';
import { type Line, line } from '../line.ts';
import { cut, oneLine, pad, widthOf } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

/** The column of who speaks is as wide as its longest word. */
export function logText({ time, who, text }: LogLine, words: FaceWords): string {
  const width = Math.max(...Object.values(words.who).map(widthOf));
  return `${time} ${pad(words.who[who] ?? who, width)} ${oneLine(text)}`;
}

/** The end of the log, the newest last. */
export const logTail = (log: readonly LogLine[], width: number, rows: number, words: FaceWords): Line[] =>
  rows < 1
    ? []
    : log
        .slice(-rows)
        .map(entry => line(cut(logText(entry, words), width), entry.who === '!' ? 'bad' : 'faint'));
