import type { BusCondition } from '../bus-condition.ts';
import type { BusNotice, OnNotice } from '../ports.ts';

const CONDITIONS: Readonly<Record<BusCondition, string>> = {
  busOff: 'The adapter went off the bus after too many errors and hears nothing; check bit rate and wiring.',
  restarted: 'The adapter was put back on the bus.',
  errorPassive: 'The bus has many errors; check bit rate, wiring and terminators.',
  errorWarning: 'The bus has errors; check wiring and terminators.',
  errorActive: 'The bus is free of errors again.',
  noAcknowledge: 'Nobody on the bus answers; check that the key is on and the plug is seated.',
  overrun: 'Frames came faster than they were taken and some were lost.',
  otherError: 'The adapter reports a bus error; check bit rate and wiring.',
};

export const conditionNotice = (condition: BusCondition): BusNotice => ({
  kind: 'condition',
  condition,
  sentence: CONDITIONS[condition],
});

/** Counts what cannot be read, and tells of the 1st, 10th, 100th and so on: rubbish must not flood the record. */
export function createRubbishCounter(piece: 'line' | 'message', onNotice: OnNotice) {
  let count = 0;
  let tellAt = 1;
  return (reason: string, text: string): void => {
    count += 1;
    if (count < tellAt) return;
    tellAt *= 10;
    const shown = JSON.stringify(text.slice(0, 40));
    const sofar = count === 1 ? `A ${piece}` : `${count} ${piece}s so far`;
    onNotice({
      kind: 'rubbish',
      count,
      sentence: `${sofar} from the bus could not be read, last ${shown}: ${reason}.`,
    });
  };
}

/** The system's own words for a failure. */
export const causeOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause));
