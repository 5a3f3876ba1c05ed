import type { Recorded } from '../../record/vocabulary/index.ts';
import { outcomeOf } from '../document/head.ts';
import { openText } from '../document/open-items.ts';
import { replayText } from '../document/trust-text.ts';
import { mannerOf } from '../manner.ts';
import type { ReportModel, Trust } from '../model.ts';
import { eventRows, readingRows } from './rows.ts';
import type { Export } from './schema.ts';

/** As the schema describes it, and so in English whatever the session was held in: programs read it. */
const exported = mannerOf('en', 'metric');

/** The report for other programs; described by `exportSchema`. */
export function toExport(model: ReportModel, recorded: readonly Recorded[]): Export {
  const { trust, job, startedAt, durationMs, gates, stops, skips, faults, openItems } = model;
  const fault = faultOf(trust);
  return {
    format: 'first-fire-report/1',
    verified: trust.sound && fault === undefined,
    ...(fault === undefined ? {} : { fault }),
    ...(trust.lastHash === undefined ? {} : { lastHash: trust.lastHash }),
    outcome: outcomeOf(model, exported).text,
    startedAt,
    durationS: durationMs / 1000,
    job,
    gates: gates.flatMap(({ gate, met, metAtMs }) =>
      gate === null ? [] : [{ gate, met, ...(metAtMs === undefined ? {} : { metAtS: metAtMs / 1000 }) }],
    ),
    stops: stops.map(({ timeMs, step, drill, cause }) => ({ timeS: timeMs / 1000, step, drill, cause })),
    skips: skips.map(({ timeMs, step, reason, by }) => ({ timeS: timeMs / 1000, step, reason, by })),
    faults: faults.map(({ spn, fmi, meaning, told }) => ({
      spn,
      fmi,
      meaning,
      decisions: told.map(({ decision }) => decision),
    })),
    openItems: openItems.map(item => openText(item, exported)),
    readings: readingRows(model),
    events: eventRows(recorded),
  };
}

function faultOf({ fault, replayFault, signatures }: Trust): string | undefined {
  if (fault) return fault.sentence;
  return replayFault ? replayText(replayFault, exported) : signatures.find(({ valid }) => !valid)?.sentence;
}
