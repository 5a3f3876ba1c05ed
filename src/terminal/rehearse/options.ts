import type { RunOptions } from '../run/options.ts';

/** Choices for a rehearsal; those of a session (profile, units, log, microphone) hold as well. */
export interface RehearseOptions extends RunOptions {
  readonly fault: readonly string[];
  readonly seed: number;
  readonly speed: number;
  readonly ambient: number;
  readonly byItself: boolean;
  readonly json?: string;
}
