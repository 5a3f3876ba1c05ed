import type { Language } from '../../prompts/types.ts';
import type { Grammar } from '../voice/ports.ts';

type Wordings = Readonly<Record<string, readonly string[]>>;

const firstOf = <T extends Wordings>(wordings: T, first: Readonly<Partial<Record<string, string>>>): T =>
  Object.fromEntries(
    Object.entries(wordings).map(([id, all]) => {
      const far = first[id];
      return [id, far === undefined ? all : [far, ...all.filter(each => each !== far)]];
    }),
  ) as unknown as T;

const made = new WeakMap<Language, Language>();

/**
 * A language as it is spoken in a loud bay: of each reply and control word the wording that is farthest from everything
 * else is the one that is asked for. The others still count.
 */
export function spokenInNoise(language: Language): Language {
  const known = made.get(language);
  if (known !== undefined) return known;
  const { replies, controls, farthest } = language;
  const loud = { ...language, replies: firstOf(replies, farthest), controls: firstOf(controls, farthest) };
  made.set(language, loud);
  return loud;
}

/** A number that is said figure by figure: fewer words that could be taken for one another. */
export const figureByFigure = (grammar: Grammar): Grammar =>
  grammar.number === undefined ? grammar : { ...grammar, number: { ...grammar.number, digitsOnly: true } };
