import type { BusSource } from '../../bus/ports.ts';
import type { RecordLog } from '../../record/index.ts';
import type { Clock } from '../../session/clock.ts';
import type { SessionHeader } from '../../session/header.ts';
import type { Restored } from '../../session/resume.ts';
import type { Session } from '../../session/session.ts';
import type { Viewer } from '../../session/viewer.ts';
import type { SpeakerProfile } from '../../voice/speaker-profile/profile.ts';
import type { ChosenVoice } from '../../voice/speakers/choose-voice.ts';
import type { ReadySound } from './hearing.ts';
import type { RunOptions } from './options.ts';

/** How a run of the program ends. */
export type RunEnd = 'signedOff' | 'ended' | 'left';

export interface RunResult {
  readonly end: RunEnd;
  /** Sentences to be read after the face has closed. */
  readonly closing: readonly string[];
}

export interface RunParts {
  readonly options: RunOptions;
  readonly header: SessionHeader;
  readonly record: RecordLog;
  readonly clock: Clock;
  readonly voice: ChosenVoice;
  /** What is heard, already looked at. */
  readonly sound: ReadySound;
  readonly bus?: BusSource | undefined;
  /** Whose voice it is, where that was measured. */
  readonly speaker: SpeakerProfile | null;
  readonly restored?: Restored;
  /** A line of the record that an interruption had cut short, in words. */
  readonly setAside?: string | null;
  /** A virtual technician answers: nobody needs to be at the keys. */
  readonly byItself?: boolean;
  /** Starts what goes along with the session, and gives what ends it. */
  readonly beside?: (session: Session, viewer: Viewer) => () => Promise<void>;
}
