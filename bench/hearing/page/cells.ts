import { allOf, type Taken } from '../count.ts';
import { shareInterval } from '../intervals.ts';

export const percent = (part: number, whole: number) => `${((100 * part) / Math.max(whole, 1)).toFixed(1)} %`;
export const levelText = (level: number | string) => (level === 'clean' ? 'clean' : `${level} dB`);

export const table = (head: readonly string[], rows: readonly (readonly string[])[]) =>
  [head, head.map(() => '---'), ...rows].map(cells => `| ${cells.join(' | ')} |`).join('\n');

export const share = (part: number, whole: number) => {
  const [low, high] = shareInterval(part, whole);
  const rounded = (value: number) => (100 * value).toFixed(1);
  return `${rounded(part / Math.max(1, whole))} (${rounded(low)}-${rounded(high)}) %`;
};

export const takenHead = ['right', 'asked again', 'wrong', 'taken for stop'];
export const shares = (taken: Taken) =>
  [taken.right, taken.unclear, taken.wrong, taken.falseStop].map(part => share(part, allOf(taken)));
export const shareCells = (taken: Taken) => [...shares(taken), String(allOf(taken))];

export const takenCells = (taken: Taken) => [
  percent(taken.right, allOf(taken)),
  String(taken.unclear),
  String(taken.wrong),
  String(taken.falseStop),
  String(allOf(taken)),
];

/** So few, and a figure is not yet to be relied on. */
export const enough = { clips: 300, speakers: 30, hours: 3 };

export const countOf = (clips: number, speakers: number) =>
  `${clips} by ${speakers}${clips < enough.clips || speakers < enough.speakers ? ', preliminary' : ''}`;
