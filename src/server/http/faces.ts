import type { Pairing } from '../pairing/pairings.ts';
import type { ServerMessage } from '../protocol/index.ts';

/** A connection, as the others see it. */
export interface Face {
  readonly address: string;
  /** Null before it has said hello. */
  readonly pairing: Pairing | null;
  send(message: ServerMessage): void;
  /** The same device has come by another connection. */
  replaced(): void;
  checkAlive(): void;
  /** Something about its pairing may have changed. */
  look(): void;
}

/** The open connections, greeted or not. */
export class Faces {
  readonly #all = new Set<Face>();

  add(connection: Face): void {
    this.#all.add(connection);
  }

  remove(connection: Face): void {
    this.#all.delete(connection);
  }

  all(): readonly Face[] {
    return [...this.#all];
  }

  /** From this address, and not greeted yet. */
  strangers(address: string): number {
    return this.all().filter(face => face.address === address && face.pairing === null).length;
  }

  ofBay(bay: string): readonly Face[] {
    return this.all().filter(face => face.pairing?.bay === bay);
  }

  ofDevice(device: string): readonly Face[] {
    return this.all().filter(face => face.pairing?.device === device);
  }
}
