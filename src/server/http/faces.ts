import type { Pairing } from '../pairing/pairings.ts';
import type { ServerMessage } from '../protocol/index.ts';
import { addressKey } from '../rate-limit.ts';

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

  /** From this address, or its network, and not greeted yet. */
  strangers(address: string): number {
    const key = addressKey(address);
    return this.all().filter(face => face.pairing === null && addressKey(face.address) === key).length;
  }

  ofBay(bay: string): readonly Face[] {
    return this.all().filter(face => face.pairing?.bay === bay);
  }

  ofDevice(device: string): readonly Face[] {
    return this.all().filter(face => face.pairing?.device === device);
  }
}
