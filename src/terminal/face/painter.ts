const ENTER = '\x1b[?1049h\x1b[?25l\x1b[2J';
const LEAVE = '\x1b[0m\x1b[?25h\x1b[?1049l';
const CLEAR = '\x1b[2J';
const ERASE_REST = '\x1b[0m\x1b[K';
/** Terminals that know it show all of a frame at once; others pass over it. */
const BEGIN = '\x1b[?2026h';
const END = '\x1b[?2026l';

/** Every so many frames all lines are written, so that what another program wrote over them goes away. */
const WHOLE_EVERY = 40;

/**
 * Paints frames on the alternate screen, line by line at fixed places. Ink's own painting counts lines back
 * from the cursor, which a resize upsets, and clears the scroll-back when a frame is as tall as the terminal.
 */
export class Painter {
  readonly #write: (text: string) => void;
  readonly #rows: () => number;
  #painted: readonly string[] = [];
  #frames = 0;
  #open = false;

  /** @param rows how many rows the terminal has now */
  constructor(write: (text: string) => void, rows: () => number) {
    this.#write = write;
    this.#rows = rows;
  }

  open(): void {
    this.#open = true;
    this.#write(ENTER);
  }

  /** Brings the screen to show this frame: lines that changed, and now and then all of them. */
  paint(frame: string): void {
    if (!this.#open) return;
    // What lies below the last row would land in it: the first frame after a resize is as tall as before.
    const lines = frame.split('\n').slice(0, this.#rows());
    const whole = this.#frames % WHOLE_EVERY === 0;
    this.#frames += 1;
    let out = '';
    for (let row = 0; row < Math.max(lines.length, this.#painted.length); row += 1) {
      const text = lines[row] ?? '';
      if (whole || text !== this.#painted[row]) out += `\x1b[${row + 1};1H${text}${ERASE_REST}`;
    }
    this.#painted = lines;
    if (out !== '') this.#write(BEGIN + out + END);
  }

  /** The terminal has another size: nothing on it counts any more. */
  resized(): void {
    if (!this.#open) return;
    this.#painted = [];
    this.#frames = 0;
    this.#write(CLEAR);
  }

  /** Gives the terminal back as it was, with its cursor. Safe to call again. */
  close(): void {
    if (!this.#open) return;
    this.#open = false;
    this.#write(LEAVE);
  }
}
