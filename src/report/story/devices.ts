import type { Recorded } from '../../record/vocabulary/index.ts';

interface Device {
  readonly name: string;
  readonly role: string;
}

/** The paired device that an event came from: its command stands before the event, behind the event before it. */
export function deviceBefore(entries: readonly Recorded[], index: number): Device | undefined {
  for (let at = index - 1; at >= 0; at -= 1) {
    const entry = entries[at];
    if (entry?.kind === 'event') return undefined;
    if (entry?.kind === 'command') return { name: entry.data.name, role: entry.data.role };
  }
  return undefined;
}
