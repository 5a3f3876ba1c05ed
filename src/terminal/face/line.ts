import type { TextProps } from 'ink';

/** What a line is for; how that looks depends on the terminal. Meaning is always in the words too. */
export type Tone =
  | 'normal'
  | 'strong'
  | 'faint'
  | 'good'
  | 'bad'
  | 'title'
  | 'alarm'
  | 'cranking'
  | 'running'
  | 'held';

/** One line of the screen, no wider than its place. */
export interface Line {
  readonly text: string;
  readonly tone: Tone;
}

/** Lines that stand beside each other. */
export type Row = readonly Line[];

export const line = (text: string, tone: Tone = 'normal'): Line => ({ text, tone });

export const linesOf = (texts: readonly string[], tone: Tone = 'normal'): Line[] =>
  texts.map(text => line(text, tone));

type Look = Pick<TextProps, 'bold' | 'dimColor' | 'inverse' | 'color' | 'backgroundColor'>;

const onGround = (backgroundColor: string, color: string): Look => ({ bold: true, color, backgroundColor });

const coloured: Readonly<Record<Tone, Look>> = {
  normal: {},
  strong: { bold: true },
  faint: { dimColor: true },
  good: { color: 'green' },
  bad: { bold: true, color: 'red' },
  title: { inverse: true },
  alarm: onGround('red', 'whiteBright'),
  cranking: onGround('magenta', 'whiteBright'),
  running: onGround('yellow', 'black'),
  held: onGround('cyan', 'black'),
};

const inverted: Look = { bold: true, inverse: true };

const uncoloured: Readonly<Record<Tone, Look>> = {
  normal: {},
  strong: { bold: true },
  faint: {},
  good: {},
  bad: { bold: true },
  title: { inverse: true },
  alarm: inverted,
  cranking: inverted,
  running: inverted,
  held: inverted,
};

export const lookOf = (tone: Tone, colour: boolean): Look => (colour ? coloured : uncoloured)[tone];
