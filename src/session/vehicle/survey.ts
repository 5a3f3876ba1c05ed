import { createDecoder } from '../../bus/decoder.ts';
import type { CanFrame } from '../../bus/frame.ts';
import { MESSAGES, staleAfterS } from '../../bus/messages.ts';
import { PARAMETERS } from '../../bus/parameters.ts';
import type { BusReading } from '../../bus/ports.ts';
import { canBeRead, type OnBus, quantities, type SiUnit } from '../../engineering/quantities/table.ts';
import { busQuantities } from '../../profile/schema.ts';

type BusQuantity = (typeof busQuantities)[number];

/** What one quantity was on the bus. */
export type Surveyed = { readonly quantity: BusQuantity; readonly unit: SiUnit } & (
  | {
      readonly kind: 'sent';
      readonly spn: number;
      readonly source: number;
      /** Seconds between two of them, in the middle. */
      readonly everyS: number;
      readonly min: number;
      readonly max: number;
    }
  /** Nobody sends it; or who does says "not available", is in error, sends what cannot be, or sends it too rarely. */
  | { readonly kind: 'notSent' | 'notAvailable' | 'inError' | 'impossible' | 'tooRare' }
);

export interface Survey {
  /** From the first frame to the last, s. */
  readonly spanS: number;
  readonly frames: number;
  /** Of these, data of J1939. */
  readonly extended: number;
  readonly senders: readonly number[];
  /** Addresses that send an engine speed, those that it was heard from most often first. */
  readonly engines: readonly number[];
  readonly readings: readonly Surveyed[];
  /** Seconds between two messages with lamps and codes of the engine; null where it sends none. */
  readonly lampsEveryS: number | null;
}

/** A parameter of one sender, as far as it was heard. */
interface Heard {
  readonly spn: number;
  readonly source: number;
  readonly timesS: number[];
  values: number;
  errors: number;
  min: number;
  max: number;
}

const ENGINE_SPEED_SPN = 190;

const repeatOf = (spn: number): number => {
  const pgn = PARAMETERS.find(parameter => parameter.spn === spn)?.pgn;
  return MESSAGES.find(message => message.pgn === pgn)?.repeatS ?? 1;
};

/** The middle one of the times between; infinite where it was heard once only. */
function everyS(timesS: readonly number[]): number {
  const gaps = timesS.slice(1).map((at, index) => at - (timesS[index] ?? at));
  const sorted = gaps.toSorted((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.POSITIVE_INFINITY;
}

/** What a bus carries of what a start reads, from a log of the running vehicle, in the order of its time. */
export function createSurvey() {
  const heard = new Map<string, Heard>();
  const lampsS = new Map<number, number[]>();
  const senders = new Set<number>();
  let frames = 0;
  let extended = 0;
  let firstS = Number.NaN;
  let lastS = Number.NaN;

  const note = (reading: BusReading) => {
    const { spn, source, timeS } = reading;
    const key = `${spn} ${source}`;
    const own: Heard = heard.get(key) ?? {
      spn,
      source,
      timesS: [],
      values: 0,
      errors: 0,
      min: Number.POSITIVE_INFINITY,
      max: Number.NEGATIVE_INFINITY,
    };
    heard.set(key, own);
    if (reading.kind === 'value') {
      own.timesS.push(timeS);
      own.values += 1;
      own.min = Math.min(own.min, reading.value);
      own.max = Math.max(own.max, reading.value);
    } else if (reading.kind === 'error') own.errors += 1;
  };
  const decoder = createDecoder({
    onReading: note,
    onDiagnostics({ active, source, timeS }) {
      if (!active) return;
      const own = lampsS.get(source) ?? [];
      lampsS.set(source, own);
      own.push(timeS);
    },
    onTransportFailure() {},
  });

  const enginesIn = (): number[] =>
    [...heard.values()]
      .filter(({ spn, values }) => spn === ENGINE_SPEED_SPN && values > 0)
      .toSorted((one, other) => other.values - one.values)
      .map(({ source }) => source);

  function surveyed(quantity: BusQuantity, engine: number | undefined): Surveyed {
    const { spns, ofEngine }: OnBus = quantities[quantity].bus;
    const { unit } = quantities[quantity];
    // As a session reads it: the engine's own only from its address, the rest by the best parameter that is sent.
    const wanted = ofEngine ? spns.slice(0, 1) : spns;
    const found = wanted.flatMap(spn =>
      [...heard.values()].filter(each => each.spn === spn && (!ofEngine || each.source === engine)),
    );
    const good = found.find(({ values }) => values > 0);
    if (!good) {
      const kind =
        found.length === 0 ? 'notSent' : found.some(({ errors }) => errors > 0) ? 'inError' : 'notAvailable';
      return { quantity, unit, kind };
    }
    const { spn, source, min, max, timesS } = good;
    if (!canBeRead(quantity, min) || !canBeRead(quantity, max)) return { quantity, unit, kind: 'impossible' };
    const every = everyS(timesS);
    return every > staleAfterS(repeatOf(spn))
      ? { quantity, unit, kind: 'tooRare' }
      : { quantity, unit, kind: 'sent', spn, source, everyS: every, min, max };
  }

  return {
    push(frame: CanFrame): void {
      frames += 1;
      if (Number.isNaN(firstS)) firstS = frame.timeS;
      lastS = frame.timeS;
      if (!frame.extended || frame.remote) return;
      extended += 1;
      senders.add(frame.id & 0xff);
      decoder.push(frame);
    },
    result(): Survey {
      const engines = enginesIn();
      const [engine] = engines;
      const lamps = engine === undefined ? undefined : lampsS.get(engine);
      return {
        spanS: Math.max(0, lastS - firstS) || 0,
        frames,
        extended,
        senders: [...senders].sort((one, other) => one - other),
        engines,
        readings: busQuantities.map(quantity => surveyed(quantity, engine)),
        lampsEveryS: lamps === undefined ? null : everyS(lamps),
      };
    },
  };
}
