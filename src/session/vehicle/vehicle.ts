import type { Code } from '../../../machines/events.ts';
import type { BusQuantity } from '../../../machines/limits/agreement.ts';
import { createDecoder } from '../../bus/decoder.ts';
import type { DiagnosticMessage } from '../../bus/diagnostics/dm1.ts';
import type { CanFrame } from '../../bus/frame.ts';
import { staleAfterS } from '../../bus/messages.ts';
import type { BusReading } from '../../bus/ports.ts';
import { createReadingBook, type LatestReading } from '../../bus/reading-book.ts';
import { type OnBus, quantities } from '../../engineering/quantities/table.ts';
import type { VehicleBus } from '../../profile/schema.ts';

/** What the vehicle shows now: fresh, good values and nothing else. What is stale, absent or in error is null. */
export interface VehicleLook {
  /** In SI; null as well for what the profile does not list. */
  value(quantity: BusQuantity): number | null;
  /** Lamps that can be known, by their id in the profile. */
  lamps(): Readonly<Record<string, 'lit' | 'dark'>>;
  /** All active codes of the engine; null when they are not all known. */
  codes(): readonly Code[] | null;
  /** The engine's controller lights the red-stop lamp. */
  redStop(): boolean;
}

export interface Vehicle extends VehicleLook {
  /** Takes the next frame; its own time is of no account, it counts as of now. Never throws. */
  push(frame: CanFrame): void;
  tick(): void;
}

/** Suspect parameters of the engine by lamp id, for lamps that have a parameter of their own. */
const LAMP_SPNS = { waitToStart: 1081, waterInFuel: 97 } as const;
const DM1_LAMPS = ['malfunction', 'redStop', 'amberWarning', 'protect'] as const;
/** An active DM1 is repeated every second: SAE J1939-73 (from memory). */
const DM1_STALE_S = staleAfterS(1);

const WANTED: ReadonlySet<number> = new Set([
  ...Object.values(quantities).flatMap(facts => ('bus' in facts ? facts.bus.spns : [])),
  ...Object.values(LAMP_SPNS),
]);

const numberIn = (reading: LatestReading): number | null =>
  reading.kind === 'value' && Number.isFinite(reading.value) ? reading.value : null;

const stateIn = (reading: LatestReading): 'lit' | 'dark' | null => {
  const state = numberIn(reading);
  return state === 1 ? 'lit' : state === 0 ? 'dark' : null;
};

/**
 * Keeps what the bus last said of each thing, with its age by the session's clock.
 * @param onHeard called after each frame with something in it that a session acts on
 */
export function createVehicle(
  { engineAddress, readings }: VehicleBus,
  nowS: () => number,
  onHeard: () => void,
): Vehicle {
  const book = createReadingBook();
  let dm1: DiagnosticMessage | null = null;
  let heard = false;
  const decoder = createDecoder({
    onReading(reading: BusReading) {
      book.note(reading);
      heard ||= WANTED.has(reading.spn);
    },
    onDiagnostics(message) {
      if (!message.active || message.source !== engineAddress) return;
      dm1 = message;
      heard = true;
    },
    // What a broken message would have said stays unknown, and what is known grows old.
    onTransportFailure() {},
  });
  const fromEngine = (spn: number) => book.read(spn, nowS(), engineAddress);
  const fresh = () => (dm1 && nowS() - dm1.timeS <= DM1_STALE_S ? dm1 : null);

  return {
    push(frame) {
      heard = false;
      decoder.push({ ...frame, timeS: nowS() });
      if (heard) onHeard();
    },
    tick() {
      decoder.tick(nowS());
    },
    value(quantity) {
      if (!readings.includes(quantity)) return null;
      const { spns, ofEngine }: OnBus = quantities[quantity].bus;
      return numberIn(ofEngine ? fromEngine(spns[0]) : book.readFirst(spns, nowS()));
    },
    lamps() {
      const seen: Record<string, 'lit' | 'dark'> = {};
      for (const [id, spn] of Object.entries(LAMP_SPNS)) {
        const state = stateIn(fromEngine(spn));
        if (state) seen[id] = state;
      }
      for (const name of DM1_LAMPS) {
        const status = fresh()?.lamps[name].status;
        if (status === 'on') seen[name] = 'lit';
        else if (status === 'off') seen[name] = 'dark';
      }
      return seen;
    },
    codes() {
      const message = fresh();
      if (!message?.complete) return null;
      const codes = message.faults.flatMap(({ spn, fmi }) =>
        spn.kind === 'known' ? [{ spn: spn.spn, fmi }] : [],
      );
      // A number that may be one of several is none to act on.
      return codes.length === message.faults.length ? codes : null;
    },
    redStop: () => fresh()?.lamps.redStop.status === 'on',
  };
}
