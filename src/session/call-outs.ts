import type { Said } from '../../machines/context.ts';
import { type Moment, stateName } from '../../machines/moment.ts';

interface CallOut {
  readonly line: Said['line'];
  readonly text: string;
  /** What the session had come to when it was called out. */
  readonly moment: Moment;
  /** Not all was off: it is what there is to do until all is. */
  readonly stands: boolean;
}

/** They say what the face shows of every stop anyhow, and give way to what has to be done. */
const givesWay: readonly Said['line'][] = ['stopHeard', 'stopCause', 'notOffYet'];

const isAllOff = (moment: Moment) => !moment.matches('stopped') || moment.hasTag('madeSafe');

/**
 * What was called out and still has to be seen. It goes by what the session has come to, never by the time between two
 * sentences: what is asked with a call-out is asked once that is on the disk, and nobody knows how long a disk takes.
 */
export class CallOuts {
  #all: readonly CallOut[] = [];

  /** @param moment what the session has come to */
  called(line: Said['line'], text: string, moment: Moment): void {
    const others = this.#all.filter(each => each.line !== line);
    this.#all = [{ line, text, moment, stands: !isAllOff(moment) }, ...others];
  }

  /** Something is asked: what was called out before it came to that is past, but for what stands. */
  asked(moment: Moment): void {
    const isSameQuestion = (each: CallOut) =>
      moment.matches('stopped') && stateName(each.moment) === stateName(moment);
    this.#keep(each => each.stands || each.moment === moment || isSameQuestion(each));
  }

  /** Somebody has answered something: beside an engine that is worked at that shows that they have seen it. */
  answered(moment: Moment): void {
    if (!moment.matches('stopped')) this.#keep(each => each.stands);
  }

  /** What there is to be seen now, the newest first. */
  shown(moment: Moment): readonly string[] {
    if (isAllOff(moment)) this.#keep(each => !each.stands);
    const told = this.#all.filter(each => !givesWay.includes(each.line));
    return (told.length > 0 ? told : this.#all.slice(0, 1)).map(({ text }) => text);
  }

  #keep(isKept: (each: CallOut) => boolean): void {
    this.#all = this.#all.filter(isKept);
  }
}
