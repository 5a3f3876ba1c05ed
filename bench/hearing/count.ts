import { isMeant as isExactly, type Meaning } from '../../src/voice/meaning.ts';
import type { Heard } from '../../src/voice/ports.ts';
import type { Outcome } from './play.ts';

/** How utterances were taken. Each counts once, by the worst thing that came of it. */
export interface Taken {
  right: number;
  /** Not understood, or not heard at all: it is asked again. */
  unclear: number;
  /** Taken for something else: what the read-back is there for. */
  wrong: number;
  /** Taken for a stop word. */
  falseStop: number;
}

export const nothingTaken = (): Taken => ({ right: 0, unclear: 0, wrong: 0, falseStop: 0 });
export const allOf = ({ right, unclear, wrong, falseStop }: Taken): number =>
  right + unclear + wrong + falseStop;

export function sum(all: readonly Taken[]): Taken {
  const total = nothingTaken();
  for (const taken of all) {
    for (const key of ['right', 'unclear', 'wrong', 'falseStop'] as const) total[key] += taken[key];
  }
  return total;
}

/** Whether what was heard is what was meant; nothing is what was meant by talk that answers nothing. */
export const isMeant = (means: Meaning | undefined, heard: Meaning | Heard): boolean =>
  means !== undefined && isExactly(means, heard);

/** Exactly what was meant and nothing else is right; anything else that counted is wrong. */
export function take({ utterance, reports }: Outcome): keyof Taken {
  const counted = reports.map(({ heard }) => heard).filter(({ kind }) => kind !== 'unclear');
  const others = counted.filter(heard => !isMeant(utterance.means, heard));
  if (others.some(({ kind }) => kind === 'stop')) return 'falseStop';
  if (others.length > 0) return 'wrong';
  if (counted.length > 0) return 'right';
  return utterance.means === undefined ? 'right' : 'unclear';
}

/** What was made of one utterance by whoever says one thing of each, or nothing. */
export function takenAs(means: Meaning | undefined, heard: Meaning | undefined): keyof Taken {
  if (heard === undefined) return means === undefined ? 'right' : 'unclear';
  if (isMeant(means, heard)) return 'right';
  return heard.kind === 'stop' ? 'falseStop' : 'wrong';
}
