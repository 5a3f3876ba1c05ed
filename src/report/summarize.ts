import { languages, usualLanguage } from '../../prompts/index.ts';
import type { Entry, Fault, Remark } from '../record/index.ts';
import { ofKind, type Recorded, readRecorded } from '../record/vocabulary/index.ts';
import { languageIn, readHeader } from '../session/header.ts';
import type { Outcome, ReportModel, SignatureState, SkipStory } from './model.ts';
import { replaySession } from './replay.ts';
import { cautionsOf } from './story/cautions.ts';
import { computedOf } from './story/computed.ts';
import { doubtsOf } from './story/doubts.ts';
import { earOf } from './story/ear.ts';
import { faultsOf } from './story/faults.ts';
import { gatesOf, passedSteps } from './story/gates.ts';
import { holdsOf } from './story/holds.ts';
import { misheardOf } from './story/misheard.ts';
import { openItemsOf } from './story/open-items.ts';
import { judgedSteps, readingsOf } from './story/readings.ts';
import { signingOf } from './story/signing.ts';
import { stopsOf } from './story/stops.ts';
import { timeLineOf } from './story/time-line.ts';
import { voicesOf } from './story/voices.ts';

export interface SummaryInput {
  /** The sound entries of the record, from the first. */
  readonly entries: readonly Entry[];
  /** What is wrong behind them, if anything. */
  readonly fault?: Fault;
  readonly remarks?: readonly Remark[];
  readonly signatures?: readonly SignatureState[];
}

/** Not gauges: the two halves of a spoken fault code. */
const codeHalves = ['suspectParameter', 'failureMode'];

/**
 * Makes the story of a session from its record. Pure; never throws, whatever sound entries hold: what is
 * not understood is counted in `trust.notUnderstood`, and what cannot be known is null.
 */
export function summarize(input: SummaryInput): ReportModel {
  const { entries, fault, remarks = [], signatures = [] } = input;
  const [opened] = entries;
  const header = opened ? readHeader(opened.data) : null;
  const language = (opened && languageIn(opened.data)) ?? usualLanguage;
  const { entries: recorded, notUnderstood } = readRecorded(entries);
  const replayed = header ? replaySession(header, recorded, entries) : undefined;
  const replay = replayed?.ok ? replayed.replay : undefined;

  const lastHash = entries.at(-1)?.hash;
  const durationMs = recorded.at(-1)?.timeMs ?? 0;
  const stops = stopsOf(recorded);
  const timeLine = timeLineOf(recorded, stops, replay);
  const readings = readingsOf(recorded).filter(({ quantity }) => !codeHalves.includes(quantity));
  const gates = gatesOf(recorded, judgedSteps(readings), replay);
  const passed = passedSteps(recorded, replay);
  const skips = skipsOf(recorded);
  const standing = skips.filter(({ step }) => passed.get(step)?.reopened === false);

  return {
    trust: {
      sound: fault === undefined && entries.length > 0,
      ...(fault === undefined ? {} : { fault }),
      entries: entries.length,
      ...(lastHash === undefined ? {} : { lastHash }),
      remarks,
      ...(replay ? {} : { replayFault: replayed?.ok === false ? replayed.fault : { kind: 'noHeader' } }),
      notUnderstood,
      signatures,
    },
    language,
    job: header?.job ?? null,
    profile: header?.profile ?? null,
    startedAt: opened?.at ?? null,
    endedAt: entries.at(-1)?.at ?? null,
    durationMs,
    outcome: outcomeOf(recorded),
    lastPhase: timeLine.phases.at(-1)?.phase ?? '',
    timeLine,
    gates,
    readings,
    holds: replay ? holdsOf(replay, durationMs) : null,
    faults: faultsOf(recorded, header?.profile ?? null, replay),
    stops,
    skips,
    misheard: misheardOf(recorded),
    ear: earOf(recorded),
    voices: voicesOf(recorded),
    doubts: doubtsOf(recorded),
    besideOthers: recorded.filter(ofKind('besideOthers')).map(({ timeMs, data }) => ({ timeMs, ...data })),
    rehearsal: header?.rehearsal === true,
    signing: signingOf(recorded),
    cautions: cautionsOf(recorded, languages[language].signalWords),
    computed: computedOf(recorded, replay),
    openItems: openItemsOf(recorded, gates, standing, replay),
    retorque: (header?.profile.retorque ?? []).map(({ name }) => ({
      name,
      done: passed.get('signOff.retorque')?.reopened === false,
    })),
    problems: recorded.filter(ofKind('problem')).map(({ timeMs, data }) => ({ timeMs, text: data.sentence })),
    refusals: recorded
      .filter(ofKind('refused'))
      .map(({ timeMs, data }) => ({ timeMs, text: data.step, unmet: data.unmet })),
    notCarriedOut: recorded
      .filter(ofKind('notCarriedOut'))
      .map(({ timeMs, data: { name, role, cause, why } }) => ({ timeMs, device: name, role, cause, why })),
  };
}

const skipsOf = (entries: readonly Recorded[]): SkipStory[] =>
  entries.filter(ofKind('skipped')).map(({ timeMs, data }) => ({ timeMs, ...data }));

/** How a session ended, by its record. */
export function outcomeOf(entries: readonly Recorded[]): Outcome {
  const closed = entries.findLast(ofKind('closed'));
  const last = entries.findLast(ofKind('event'));
  if (closed?.data.outcome === 'signedOff') return { kind: 'signedOff' };
  if (closed) return { kind: 'ended' };
  return last || entries.length > 0
    ? { kind: 'open', stopped: last?.data.state.startsWith('stopped') ?? false }
    : { kind: 'nothing' };
}
