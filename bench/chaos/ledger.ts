import type { Deed, ServerMessage } from '../../src/server/protocol/index.ts';
import type { View } from '../../src/session/view.ts';
import type { ServerProcess } from './server.ts';

/** Whoever is told that something is on the record: what it shows is held against it. */
export interface Promisee {
  readonly who: { readonly bay: string };
  readonly state: { readonly session: string | null } | null;
  readonly view: Pick<View, 'problems'> | null;
  readonly connection: { readonly device: string };
  readonly goesOn: boolean;
}

/** Something that a face was told is on the record. */
export interface Promised {
  readonly bay: string;
  readonly session: string;
  /** Of the device. */
  readonly device: string;
  readonly id: string;
  readonly what: Deed['do'];
  readonly run: number;
  readonly atMs: number;
  /** A stop is answered before the disk has it; all else after. */
  readonly isStop: boolean;
  /** Its device showed, no later than the answer (soon after, where it is a stop), that it is in memory only. */
  shownInMemory: boolean;
}

/** As `Run` says it to the faces of its bay. */
const IN_MEMORY = 'The laptop can no longer write the record';

/** A stop is answered before anybody knows whether the disk takes it. */
const STOP_SHOWN_WITHIN_MS = 3000;

const showsInMemory = ({ view }: Promisee): boolean =>
  view?.problems.some(sentence => sentence.includes(IN_MEMORY)) ?? false;

/** What the faces were told, to be held against the records. */
export class Ledger {
  readonly promised: Promised[] = [];
  readonly #server: Pick<ServerProcess, 'runs'>;
  /** When the server was killed, and which run that ended. */
  readonly kills: { readonly run: number; readonly atMs: number }[] = [];

  constructor(server: Pick<ServerProcess, 'runs'>) {
    this.#server = server;
  }

  answered(
    device: Promisee,
    id: string,
    deed: Deed,
    message: Extract<ServerMessage, { type: 'ack' | 'error' }>,
    wentOn: boolean,
  ): void {
    if (message.type !== 'ack') return;
    const isStop = message.stop !== undefined;
    // A stop that is joined to one before is not on the record for itself; nor is one of a session that is over.
    if (isStop && (message.again || message.stop === 'nothingRuns')) return;
    const needsSession = ['takeOver', 'forget', 'declineHold', 'askHold'].includes(deed.do);
    if (needsSession && !(wentOn && device.goesOn)) return;
    this.promised.push({
      bay: device.who.bay,
      session: device.state?.session ?? '',
      device: device.connection.device,
      id,
      what: deed.do,
      run: this.#server.runs,
      atMs: performance.now(),
      isStop,
      shownInMemory: showsInMemory(device),
    });
  }

  sees(device: Promisee): void {
    if (!showsInMemory(device)) return;
    const sinceMs = performance.now() - STOP_SHOWN_WITHIN_MS;
    for (let nth = this.promised.length - 1; nth >= 0; nth -= 1) {
      const one = this.promised[nth];
      if (one === undefined || one.atMs < sinceMs) return;
      if (one.isStop && one.device === device.connection.device) one.shownInMemory = true;
    }
  }

  /** Its device showed that it is in memory only, and the server was killed after that. */
  wasInMemory({ run, atMs, shownInMemory }: Promised): boolean {
    return shownInMemory && this.kills.some(kill => kill.run === run && kill.atMs >= atMs);
  }

  /** The server was killed in the moment after. */
  wasKilledWithin({ run, atMs }: Promised, ms: number): boolean {
    return this.kills.some(kill => kill.run === run && kill.atMs >= atMs && kill.atMs - atMs <= ms);
  }
}
