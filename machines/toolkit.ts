import { setup } from 'xstate';
import type { GroupId, ReplyId } from '../prompts/types.ts';
import type { Profile } from '../src/profile/schema.ts';
import type { Note } from '../src/record/vocabulary/kinds.ts';
import type { Context, JobCard, Said } from './context.ts';
import type { SessionEvent } from './events.ts';
import type { Person, Quantity } from './vocabulary.ts';

export type { Note };

/** What may be said in a state, besides the words that are always understood. */
export interface Offer {
  readonly replies: readonly ReplyId[];
  readonly quantity?: Quantity;
  /** A number that is being read back: another one may be said, and contradicts it. */
  readonly corrects?: Quantity;
  readonly by: Person;
  /** Several steps are asked together: what they are called as one. */
  readonly group?: GroupId;
  /**
   * The reply that a plain "yes" or "done" stands for; `always`: by voice too, as nothing hangs on it that a
   * misheard word could open.
   */
  readonly affirmed?: { readonly reply: ReplyId; readonly always: boolean };
}

export interface SessionInput {
  readonly profile: Profile;
  readonly job: JobCard;
}

/**
 * The typed parts that every state is made of. `say` and `note` have no effect of their own: whoever
 * runs the machine finds them in the list of actions and carries them out.
 */
export const kit = setup({
  types: {
    context: {} as Context,
    events: {} as SessionEvent,
    input: {} as SessionInput,
    /** critical: no hold, no going back. cranking, running: what the engine does. */
    tags: {} as 'critical' | 'cranking' | 'running',
    meta: {} as Offer,
  },
  actions: {
    say: (_, _said: Said) => {},
    note: (_, _note: Note | null) => {},
  },
});

export type Node = Parameters<typeof kit.createStateConfig>[0];
export type Nodes = Record<string, Node>;

/** Anything a move does besides moving. */
export type Effect = ReturnType<typeof update> | ReturnType<typeof note> | ReturnType<typeof remark>;

/** One way out of a state. */
export interface Move {
  readonly target?: string;
  readonly guard?: (look: Look) => boolean;
  readonly actions?: Effect | Effect[];
}

/** A look at the session and at what just happened to it; `event` has a stamp except at the very start. */
export interface Look {
  readonly context: Context;
  readonly event: SessionEvent;
}

/** The moment of an event; the event that starts the machine carries none and counts as zero. */
export const atMs = (event: SessionEvent): number => event.atMs ?? 0;

/** Changes what the session knows. */
export const update = (change: (look: Look) => Partial<Context>) => kit.assign(look => change(look));

/** A line to be said; the step and the priority are filled in. */
export type Line = (look: Look) => Omit<Said, 'step' | 'priority'> & Partial<Said>;

/** Says a line and remembers it for "say again". */
export const speak = (line: Line) => {
  const complete = (look: Look): Said => ({ step: look.context.step, priority: 'prompt', ...line(look) });
  return [
    update(look => ({ lastSaid: complete(look) })),
    { type: 'say' as const, params: (look: Look) => complete(look) },
  ] as const;
};

/** Says a line in passing: "say again" still repeats the question before it. */
export const remark = (line: Line) => ({
  type: 'say' as const,
  params: (look: Look): Said => ({ step: look.context.step, priority: 'notice', ...line(look) }),
});

/** Puts a fact on the record beside the event that caused it; null where there is none. */
export const note = (make: (look: Look) => Note | null) => ({
  type: 'note' as const,
  params: (look: Look) => make(look),
});
