import { type LogPlace, LogWriter, type MakePlace, type RecordLog } from '../../src/record/record-log.ts';

import { type RecordClock, sealNext } from '../../src/record/seal-next.ts';

const full = (): Error => Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });

/** A place for a record that takes whole blocks while it has room, and says as the system does when it has none. */
export class SmallDisk implements LogPlace {
  readonly path = 'small disk';
  readonly lines: string[] = [];
  isFull = false;
  #answers: Promise<void> = Promise.resolve();
  answer: () => void = () => {};
  /** How often something was to be written. */
  tries = 0;

  /** From now on nothing comes of what is given to it, until `answer` is called. */
  hang(): void {
    this.#answers = new Promise(resolve => {
      this.answer = resolve;
    });
  }

  async append(lines: readonly string[]): Promise<void> {
    this.tries += 1;
    await this.#answers;
    if (this.isFull) throw full();
    this.lines.push(...lines);
  }

  async release(): Promise<void> {}
}

const nowhereElse: MakePlace = async () => {
  throw full();
};

/** A record on such a disk, its first entry in its place. */
export function recordOn(
  disk: SmallDisk,
  header: Parameters<typeof sealNext>[2],
  clock: RecordClock,
): RecordLog {
  const opened = sealNext(undefined, 'opened', { ...header, format: 'first-fire-record' }, clock);
  disk.lines.push(opened.line);
  return new LogWriter(disk, nowhereElse, clock, [opened.line], opened.entry);
}
