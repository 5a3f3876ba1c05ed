import { quantityUnits } from '../../../machines/vocabulary.ts';
import type { Recorded } from '../../record/vocabulary/index.ts';
import type { JudgedStep, Reading, ReadingVerdict } from '../model.ts';
import { own } from '../own.ts';
import { phaseOfStep } from './phases.ts';

interface Said {
  readonly si: number;
  readonly timeMs: number;
}

/** Every gauge value that counts: those confirmed and judged, and those that came by themselves. */
export function readingsOf(entries: readonly Recorded[]): Reading[] {
  const readings: Reading[] = [];
  let phase = 'job';
  let said: Said[] = [];
  for (const entry of entries) {
    if (entry.kind === 'event') {
      const [first = ''] = entry.data.state.split('.');
      if (phaseOfStep(entry.data.state) !== null) phase = first;
      if (entry.data.type === 'value') said.push({ si: entry.data.si, timeMs: entry.timeMs });
    } else if (entry.kind === 'verdict') {
      readings.push(...judgedReadings(entry, said));
      said = [];
    } else if (entry.kind === 'reading') {
      const { quantity, si } = entry.data;
      const { seq, timeMs, at } = entry;
      const unit = own(quantityUnits, quantity) ?? '';
      readings.push({ seq, timeMs, at, step: '', phase, quantity, si, unit, source: 'bus' });
    } else if (entry.kind === 'engineHeard' && entry.data.rpm != null) {
      const { seq, timeMs, at } = entry;
      const quantity = 'engineSpeed';
      readings.push({
        seq,
        timeMs,
        at,
        step: '',
        phase,
        quantity,
        si: entry.data.rpm,
        unit: 'rpm',
        source: 'ear',
      });
    }
  }
  return readings;
}

function judgedReadings({ seq, at, timeMs, data }: Recorded<'verdict'>, said: readonly Said[]): Reading[] {
  const { quantity, value, unit, step, series } = data;
  if (value == null || quantity == null) return [];
  const base = {
    seq,
    at,
    step,
    phase: phaseOfStep(step) ?? '',
    quantity,
    unit: unit ?? '',
    source: 'confirmed' as const,
  };
  // The values of a series were said one after the other, before all of them were confirmed at once.
  const earlier = (series ?? []).slice(0, -1);
  const times = said.slice(-(earlier.length + 1)).map(value => value.timeMs);
  return [
    ...earlier.map((si, index) => ({ ...base, si, timeMs: times[index] ?? timeMs })),
    { ...base, si: value, timeMs: series ? (times.at(-1) ?? timeMs) : timeMs, verdict: verdictOf(data) },
  ];
}

function verdictOf(data: Recorded<'verdict'>['data']): ReadingVerdict {
  const { met, min, max, margin, of, ofUnit, rule, source, why } = data;
  return {
    met,
    ...(min == null ? {} : { min }),
    ...(max == null ? {} : { max }),
    ...(margin == null ? {} : { margin }),
    ...(of == null ? {} : { of: { value: of, unit: ofUnit ?? '' } }),
    ...(rule == null ? {} : { rule }),
    ...(source == null ? {} : { source }),
    ...(why == null ? {} : { why }),
  };
}

/** The judged readings, step by step in the order in which each step was first read. */
export function judgedSteps(readings: readonly Reading[]): JudgedStep[] {
  const bySteps = new Map<string, Reading[]>();
  for (const reading of readings) {
    if (reading.source !== 'confirmed') continue;
    const key = `${reading.step}/${reading.quantity}`;
    const list = bySteps.get(key);
    if (list) list.push(reading);
    else bySteps.set(key, [reading]);
  }
  return [...bySteps.values()].flatMap(list => {
    const judged = list.filter(reading => reading.verdict !== undefined);
    const last = judged.at(-1);
    if (!last) return [];
    const values = list.map(reading => reading.si);
    return [
      {
        step: last.step,
        last,
        failedBefore: judged.slice(0, -1).filter(reading => reading.verdict?.met === false),
        count: list.length,
        lowestSi: values.reduce((a, b) => Math.min(a, b)),
        highestSi: values.reduce((a, b) => Math.max(a, b)),
      },
    ];
  });
}
