import type { Said } from '../../machines/context.ts';
import type { Sentence } from './wording.ts';

/** A line as it is worded, and how it presses. */
export type Worded = Sentence & Pick<Said, 'priority'>;

export interface OneSentence extends Sentence {
  /** `prompt` where it asks something. */
  readonly priority: 'prompt' | 'notice';
  /** What of it is shown beside the question that it asks. */
  readonly inPassing: string;
}

/** What is said at one moment is one sentence, in its order. */
export function asOneSentence(lines: readonly Worded[]): OneSentence {
  const join = (part: keyof Sentence) => lines.flatMap(line => line[part] || []).join(' ');
  const asked = lines.findLastIndex(line => line.priority === 'prompt');
  return {
    spoken: join('spoken'),
    shown: join('shown'),
    priority: asked === -1 ? 'notice' : 'prompt',
    // What comes before a question, as what has to be known for it, is shown beside it.
    inPassing: lines
      .filter((_, index) => index !== asked)
      .map(({ shown }) => shown)
      .join(' '),
  };
}
