import type { Recorded } from '../../record/vocabulary/index.ts';
import type { ReportModel } from '../model.ts';
import { type EventRow, isEventRow, type ReadingRow, rowKind } from './schema.ts';

const seconds = (ms: number): number => ms / 1000;

/** Every gauge value as a row. */
export const readingRows = ({ readings }: ReportModel): ReadingRow[] =>
  readings.map(({ seq, at, timeMs, phase, step, quantity, si, unit, source, verdict }) => {
    const { source: ruleSource, ...rest } = verdict ?? {};
    return {
      seq,
      at,
      timeS: seconds(timeMs),
      phase,
      step,
      quantity,
      value: si,
      unit,
      source,
      ...rest,
      ...(ruleSource === undefined ? {} : { ruleSource }),
    };
  });

/** Everything that happened as rows. */
export const eventRows = (recorded: readonly Recorded[]): EventRow[] =>
  recorded
    .filter(({ kind }) => isEventRow(kind))
    .map(entry => ({
      seq: entry.seq,
      at: entry.at,
      timeS: seconds(entry.timeMs),
      kind: rowKind(entry.kind),
      step: '',
      by: '',
      ...told(entry),
    }));

const busText = (bus: Recorded<'disagreement'>['data']['bus']) =>
  bus == null ? '?' : typeof bus === 'object' ? bus.map(({ spn, fmi }) => `${spn}/${fmi}`).join(' ') : bus;

type ToldRow = Partial<Pick<EventRow, 'step' | 'by'>> & Pick<EventRow, 'text'>;

function told(entry: Recorded): ToldRow {
  switch (entry.kind) {
    case 'event': {
      const { data: event } = entry;
      const what = 'id' in event ? event.id : 'si' in event ? `${event.quantity} ${event.si}` : '';
      return {
        by: event.by,
        text: `${event.type}${what === '' ? '' : ` ${what}`} via ${event.via}, then ${event.state}`,
      };
    }
    case 'heard':
      return { by: entry.data.by, text: `${entry.data.text} (${entry.data.reason ?? entry.data.kind})` };
    case 'said':
      return { step: entry.data.step, text: entry.data.text };
    case 'passed':
      return { step: entry.data.step, by: entry.data.by ?? '', text: entry.data.gate ?? '' };
    case 'verdict':
      return {
        step: entry.data.step,
        text: `${entry.data.quantity ?? ''} ${entry.data.met ? 'met' : 'not met'}`,
      };
    case 'inTime':
      return {
        step: entry.data.step,
        text: `${entry.data.seconds ?? '?'} s ${entry.data.met ? 'in time' : 'late'}`,
      };
    case 'stopped':
      return { step: entry.data.step, by: entry.data.by ?? '', text: entry.data.cause ?? '' };
    case 'reopened':
      return { text: `${entry.data.cause ?? ''}: ${entry.data.steps.join(' ')}` };
    case 'skipped':
      return { step: entry.data.step, by: entry.data.by, text: entry.data.reason };
    case 'faults':
      return {
        step: entry.data.step,
        text: entry.data.faults.map(({ spn, fmi, decision }) => `${spn}/${fmi} ${decision}`).join(', '),
      };
    case 'refused':
      return { step: entry.data.step, text: entry.data.unmet.join(' ') };
    case 'disagreement': {
      const { step, quantity, lamp, spoken, bus, heard } = entry.data;
      const other = heard == null ? `bus ${busText(bus)}` : `by ear ${heard}`;
      return { step, text: `${quantity ?? lamp ?? ''} spoken ${spoken ?? '?'}, ${other}`.trim() };
    }
    case 'problem':
      return { text: entry.data.sentence };
    case 'hearing':
      return {
        text: `${entry.data.finding}, voice ${entry.data.aboveNoiseDb?.toFixed(0) ?? '?'} dB above the noise`,
      };
    case 'closed':
      return { text: entry.data.outcome };
    case 'command':
      return { by: entry.data.role, text: `${entry.data.name}: ${entry.data.do}` };
    case 'notCarriedOut': {
      const { name, role, cause, why } = entry.data;
      return { by: role, text: `${name}: ${entry.data.do} for ${cause}, not carried out: ${why}` };
    }
    case 'reading':
      return { text: `${entry.data.quantity} ${entry.data.si}` };
    case 'engineHeard': {
      const { happened, rpm } = entry.data;
      return { text: `by ear ${happened ?? ''} ${rpm == null ? '' : `${Math.round(rpm)} rpm`}`.trim() };
    }
    case 'besideOthers': {
      const { step, figure, value, unit, others, below, within } = entry.data;
      const place = `above ${below} of ${others} starts${within ? '' : ', not as usual'}`;
      return { step, text: `${figure} ${value} ${unit}, ${place}` };
    }
    case 'otherVoice':
      return { step: entry.data.step, text: '' };
    case 'voiceLearned': {
      const { by, utterances, kept } = entry.data;
      return { by, text: `${utterances} utterances, ${kept ? 'kept' : 'not kept'}` };
    }
    case 'contradiction': {
      const { step, quantity, before, now } = entry.data;
      return { step, text: `${quantity ?? ''} ${before ?? '?'} read back, then ${now ?? '?'}`.trim() };
    }
    case 'doubted': {
      const { step, quantity, reply, value, min, max } = entry.data;
      const limits = [min == null ? '' : `>= ${min}`, max == null ? '' : `<= ${max}`].join(' ').trim();
      return { step, text: `${reply ?? quantity ?? ''} ${value ?? ''}, expected ${limits}`.trim() };
    }
    case 'vouched': {
      const { step, quantity, reply, value, by } = entry.data;
      return { step, by, text: `${reply ?? quantity ?? ''} ${value ?? ''}`.trim() };
    }
    case 'barred':
      return { step: entry.data.step, text: entry.data.why };
    case 'found': {
      const { step, point, finding, does } = entry.data;
      return { step, text: `${point}: ${finding} (${does})` };
    }
    case 'leftOpen': {
      const { step, quantity, value, unit, finding, by } = entry.data;
      return { step, by, text: [quantity, value, unit, finding].filter(part => part != null).join(' ') };
    }
    case 'settled':
      return { step: entry.data.step, text: '' };
    case 'takenBack': {
      const { step, quantity, value } = entry.data;
      return { step, text: `${quantity ?? ''} ${value ?? '?'} taken back`.trim() };
    }
    case 'resumed':
    case 'recovered':
      return { text: '' };
  }
}
