import type { Entry } from '../../src/record/index.ts';
import { understand } from '../../src/record/vocabulary/index.ts';

export interface CommandsFound {
  /** `device id` of each command, as often as it was done where it should have been once. */
  readonly commands: ReadonlyMap<string, number>;
  readonly devices: ReadonlySet<string>;
  /**
   * Stops that a device sent again, their answer not having reached it, when the session had been gone on with: it
   * cannot know that, and so it is meant that they stop the session anew.
   */
  readonly stoppedAnew: number;
}

const isStopped = (state: string): boolean => /^stopped\b/.test(state);

/** The commands that a record holds. */
export function commandsIn(entries: readonly Pick<Entry, 'kind' | 'data'>[]): CommandsFound {
  const commands = new Map<string, number>();
  const devices = new Set<string>();
  const stoppedAt = new Map<string, number>();
  let wentOnAt = -1;
  let stoppedAnew = 0;
  for (const [at, { kind, data }] of entries.entries()) {
    const told = kind === 'command' || kind === 'event' ? understand(kind, data) : undefined;
    if (told?.kind === 'event' && !isStopped(told.data.state)) wentOnAt = at;
    if (told?.kind !== 'command') continue;
    const key = `${told.data.device} ${told.data.id}`;
    devices.add(told.data.device);
    const before = stoppedAt.get(key);
    if (told.data.do === 'stop') stoppedAt.set(key, at);
    if (told.data.do === 'stop' && before !== undefined && wentOnAt > before) stoppedAnew += 1;
    else commands.set(key, (commands.get(key) ?? 0) + 1);
  }
  return { commands, devices, stoppedAnew };
}
