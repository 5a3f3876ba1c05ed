import type { Language } from '../../prompts/types.ts';
import { own } from './own.ts';
import type { ReportWords } from './words/index.ts';

/** Names of ids that come from a record: what no table knows is shown by its own id, so that nothing is hidden. */
const named =
  <T>(table: Readonly<Record<string, T>>, text: (entry: T) => string) =>
  (id: string): string => {
    const entry = own(table, id);
    return entry === undefined ? id : text(entry);
  };

const asIs = (text: string) => text;

/** What ids are called in a language. */
export const namesIn = (language: Language, words: ReportWords) => ({
  step: named(language.steps, step => step.title),
  phase: named(language.phases, asIs),
  gate: named(language.gates, asIs),
  cause: named(language.causes, asIs),
  person: named(language.people, asIs),
  /** The prompts ask for engine speed at idle only; the bus tells it at any speed. */
  quantity: named(language.quantities, quantity =>
    quantity === language.quantities.engineSpeed ? words.engineSpeed : quantity.name,
  ),
  /** A reason or reply is stored by its id when it was spoken, and as it was typed otherwise. */
  reply: named<readonly string[]>(language.replies, wordings => wordings[0] ?? ''),
  via: named(words.via, asIs),
  unclear: named(words.unclear, asIs),
  decision: named(words.decisions, asIs),
  why: named(words.why, asIs),
  notCarriedOut: named(words.whyNotCarriedOut, asIs),
  keyOwner: named(words.keyOwners, asIs),
  trigger: named(words.triggers, asIs),
  source: named(words.sources, asIs),
  rule: named(words.ruleSentences, asIs),
});

export type Names = ReturnType<typeof namesIn>;

/** With a capital letter, as a label or at the head of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
