/**
 * The one vocabulary of a session's record: every kind of entry with the shape of its data. What is written is typed
 * by it, and what is read is read through it; it runs in a browser too.
 */
export { type BusSight, type Code, eventSchema, type SessionEvent } from './event.ts';
export {
  type Data,
  isKind,
  isNoteKind,
  type Kind,
  kinds,
  type NotCarriedOut,
  type Note,
  type NoteKind,
  type RecordKind,
  type Written,
} from './kinds.ts';
export {
  type Cause,
  type Gate,
  type Outcome,
  outcomes,
  type Person,
  type Quantity,
  unitSystems,
  type Via,
} from './names.ts';
export { jobCardSchema, jobDetailShape, jobDetails, openedSchema } from './opened.ts';
export {
  isRestart,
  ofKind,
  type Recorded,
  type RecordedSession,
  readRecorded,
  type Told,
  understand,
} from './read.ts';
export { formerVocabulary, newerVocabulary, olderVocabulary, VOCABULARY } from './version.ts';
export { inJson } from './write.ts';
