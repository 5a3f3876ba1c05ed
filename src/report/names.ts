import { english } from '../../prompts/en/index.ts';
import { own } from './own.ts';

/** Names of ids that come from a record: what no table knows is shown by its own id, so that nothing is hidden. */
const named =
  <T>(table: Readonly<Record<string, T>>, text: (entry: T) => string) =>
  (id: string): string => {
    const entry = own(table, id);
    return entry === undefined ? id : text(entry);
  };

const asIs = (text: string) => text;

export const nameOf = {
  step: named(english.steps, step => step.title),
  phase: named(english.phases, asIs),
  gate: named(english.gates, asIs),
  cause: named(english.causes, asIs),
  person: named(english.people, asIs),
  /** The prompts ask for engine speed at idle only; the bus tells it at any speed. */
  quantity: named(english.quantities, quantity =>
    quantity === english.quantities.engineSpeed ? 'engine speed' : quantity.name,
  ),
  /** A reason or reply is stored by its id when it was spoken, and as it was typed otherwise. */
  reply: named<readonly string[]>(english.replies, wordings => wordings[0] ?? ''),
  via: named<string>(
    {
      voice: 'by voice',
      keys: 'by key',
      touch: 'by touch',
      bus: 'from the vehicle bus',
      tool: 'by the tool',
    },
    asIs,
  ),
  unclear: named<string>(
    {
      nothingRecognized: 'speech, but no words',
      outOfGrammar: 'not a reply to this question',
      lowConfidence: 'too uncertain',
      tooLong: 'too long',
      deniedAtReadBack: 'denied at read-back',
      notExpected: 'not expected',
    },
    asIs,
  ),
  decision: named<string>({ blocks: 'blocks', mayGoOn: 'may go on', watch: 'watched until it clears' }, asIs),
} as const;

/** With a capital letter, as a label or at the head of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A count with its noun: 1 gate, 2 gates. */
export const count = (amount: number, one: string, many = `${one}s`): string =>
  `${amount} ${amount === 1 ? one : many}`;
