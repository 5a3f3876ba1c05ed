import type { JobCard } from '../../machines/context.ts';
import type { Language } from '../../prompts/types.ts';
import type { Profile } from '../profile/schema.ts';
import type { RecordLog } from '../record/index.ts';
import type { RecordError } from '../record/record-error.ts';
import type { SpeechQueue } from '../voice/speech-queue.ts';
import type { Clock } from './clock.ts';
import type { UnitSystem } from './units.ts';

/** What a session is led with: for which engine, in which words, and by which ports. */
export interface SessionParts {
  readonly profile: Profile;
  readonly job: JobCard;
  readonly language: Language;
  readonly units: UnitSystem;
  readonly clock: Clock;
  readonly record: Pick<RecordLog, 'append' | 'failure' | 'watch'>;
  /** What is told for as long as entries are in memory only; where it is left out, the record's own sentence. */
  readonly notKept?: (failure: RecordError) => string;
  readonly speech: SpeechQueue;
  /** A model stands in for the engine. */
  readonly rehearsal?: true | undefined;
}
