import type { LogLine } from '../../../session/view.ts';
import { type Line, line } from '../line.ts';
import { cut, oneLine } from '../text.ts';

export const logText = ({ time, who, text }: LogLine): string => `${time} ${who.padEnd(5)} ${oneLine(text)}`;

/** The end of the log, the newest last. */
export const logTail = (log: readonly LogLine[], width: number, rows: number): Line[] =>
  rows < 1
    ? []
    : log.slice(-rows).map(entry => line(cut(logText(entry), width), entry.who === '!' ? 'bad' : 'faint'));
