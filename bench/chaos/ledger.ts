import type { Deed, ServerMessage } from '../../src/server/protocol/index.ts';
import type { Device } from './device.ts';
import type { ServerProcess } from './server.ts';

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
}

/** As `Run` says it to the faces of its bay. */
const IN_MEMORY = 'The laptop saves the record elsewhere';

/** What the faces were told, to be held against the records. */
export class Ledger {
  readonly promised: Promised[] = [];
  /** Run of the server and session whose faces were told that its record is in memory only. */
  readonly #inMemory = new Set<string>();
  readonly #server: Pick<ServerProcess, 'runs'>;
  /** When the server was killed, and which run that ended. */
  readonly kills: { readonly run: number; readonly atMs: number }[] = [];

  constructor(server: Pick<ServerProcess, 'runs'>) {
    this.#server = server;
  }

  answered(
    device: Device,
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
    });
  }

  sees(device: Device): void {
    if (device.view?.problems.some(sentence => sentence.includes(IN_MEMORY)))
      this.#inMemory.add(`${this.#server.runs} ${device.state?.session}`);
  }

  /** Its faces were told that the record would be lost with the server. */
  wasInMemory({ run, session }: Promised): boolean {
    return this.#inMemory.has(`${run} ${session}`);
  }

  /** The server was killed in the moment after. */
  wasKilledWithin({ run, atMs }: Promised, ms: number): boolean {
    return this.kills.some(kill => kill.run === run && kill.atMs >= atMs && kill.atMs - atMs <= ms);
  }
}
