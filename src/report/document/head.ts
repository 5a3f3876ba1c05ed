import { jobDetails } from '../../record/vocabulary/index.ts';
import { fill } from '../../session/wording.ts';
import { dateTime, duration, time } from '../format.ts';
import type { Manner } from '../manner.ts';
import type { ReportModel, Trust } from '../model.ts';
import { capital } from '../names.ts';
import { phaseIds } from '../story/phases.ts';
import type { Block, Tone } from './blocks.ts';
import { faultText, provedByKey, replayText, signatureText } from './trust-text.ts';

/** Whether the record can be believed: always the first thing said. */
export function trustBlocks(trust: Trust, manner: Manner): Block[] {
  const words = manner.words.trust;
  if (!trust.sound) {
    return [
      {
        type: 'banner',
        tone: 'bad',
        text: fill(words.altered, { fault: faultText(trust.fault, manner) }),
        detail: manner.counted(trust.entries, words.onlyBefore),
      },
    ];
  }
  const wrong = trust.signatures.filter(({ valid }) => !valid);
  const blocks: Block[] = [];
  for (const signature of wrong)
    blocks.push({
      type: 'banner',
      tone: 'bad',
      text: fill(words.notVerified, { sentence: signatureText(signature, manner) }),
    });
  if (trust.replayFault !== undefined)
    blocks.push({
      type: 'banner',
      tone: 'bad',
      text: fill(words.notConfirmed, { fault: replayText(trust.replayFault, manner) }),
    });
  if (blocks.length > 0) return blocks;
  const owners = trust.signatures.map(({ role }) => manner.name.keyOwner(role));
  return [
    {
      type: 'banner',
      tone: 'good',
      text: manner.counted(trust.entries, owners.length > 0 ? words.verifiedAndSigned : words.verified, {
        owners: owners.join(words.and),
      }),
    },
  ];
}

function phasePlace(phase: string, { words, name }: Manner): string {
  const index = phaseIds.indexOf(phase);
  return index < 0
    ? words.outcome.beforeFirstStep
    : fill(words.outcome.inPhase, {
        n: String(index + 1),
        of: String(phaseIds.length),
        phase: name.phase(phase),
      });
}

interface OutcomeLine {
  readonly text: string;
  readonly tone: Tone;
}

/** The whole session in one line; what could not be confirmed is said as what the record says. */
export function outcomeOf(model: ReportModel, manner: Manner): OutcomeLine {
  const line = plainOutcome(model, manner);
  if (model.trust.sound && model.trust.replayFault === undefined) return line;
  return {
    text: fill(manner.words.outcome.unconfirmed, { text: line.text }),
    tone: line.tone === 'good' ? 'warn' : line.tone,
  };
}

function plainOutcome(model: ReportModel, manner: Manner): OutcomeLine {
  const { outcome, gates, stops, openItems, durationMs, lastPhase } = model;
  const words = manner.words.outcome;
  const real = gates.filter(({ gate }) => gate !== null);
  const unmet = real.filter(({ met }) => !met).length;
  const unplanned = stops.filter(({ drill }) => !drill);
  const broken = (template: string): OutcomeLine => ({
    text: fill(template, {
      time: duration(durationMs, manner),
      place: phasePlace(lastPhase, manner),
      cause: causeOf(unplanned, manner),
      ran: ran(model, manner),
    }),
    tone: 'bad',
  });
  switch (outcome.kind) {
    case 'nothing':
      return { text: words.nothing, tone: 'warn' };
    case 'signedOff': {
      const facts = [
        unmet === 0
          ? manner.counted(real.length, words.allGatesMet)
          : manner.counted(unmet, words.gatesNotMet),
        unplanned.length === 0 ? words.onlyDrills : manner.counted(unplanned.length, words.stops),
        openItems.length === 0 ? words.nothingOpen : manner.counted(openItems.length, words.openItems),
      ];
      const sound = unmet === 0 && openItems.length === 0;
      return {
        text: fill(words.signedOff, { time: duration(durationMs, manner), facts: facts.join(', ') }),
        tone: sound ? 'good' : 'warn',
      };
    }
    case 'ended':
      return broken(words.ended);
    case 'open':
      return broken(outcome.stopped ? words.stopped : words.brokenOff);
  }
}

function causeOf(stops: ReportModel['stops'], { words, name }: Manner): string {
  const last = stops.at(-1);
  if (!last) return '';
  const cause = last.cause === null ? words.outcome.noCause : name.cause(last.cause);
  return fill(words.outcome.cause, { cause });
}

function ran({ timeLine: { engine }, readings }: ReportModel, manner: Manner): string {
  const words = manner.words.outcome;
  if (engine === null) return words.ranUnknown;
  const running = engine.filter(span => span.engine === 'running');
  if (running.length === 0) {
    const turned = readings.some(({ quantity, si }) => quantity === 'engineSpeed' && si > 0);
    return turned ? words.turnedUnexpectedly : words.didNotRun;
  }
  const ranMs = running.reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0);
  return fill(words.ranFor, { time: duration(ranMs, manner) });
}

const gatesTone = ({ trust }: ReportModel, all: boolean): Tone =>
  all ? (trust.sound && trust.replayFault === undefined ? 'good' : 'warn') : 'bad';

/** What matters most, counted, for who reads no further. */
export function figuresAtAGlance(model: ReportModel, manner: Manner): Block {
  const { timeLine, faults, misheard, stops, gates, openItems, skips, signing } = model;
  const words = manner.words.glance;
  const running = (timeLine.engine ?? []).filter(span => span.engine === 'running');
  const ranMs = running.reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0);
  const real = gates.filter(({ gate }) => gate !== null);
  const met = real.filter(gate => gate.met).length;
  const unplanned = stops.filter(({ drill }) => !drill).length;
  const [first] = running;
  const row = (label: string, text: string, tone?: Tone) => ({
    label,
    value: { text, strong: true, ...(tone ? { tone } : {}) },
  });
  const ranText = first
    ? fill(words.ranFrom, { time: duration(ranMs, manner), from: time(first.fromMs) })
    : words.ranNowhere;
  return {
    type: 'facts',
    rows: [
      row(words.ran, timeLine.engine === null ? words.ranUnknown : ranText),
      row(
        words.gates,
        fill(words.gatesOf, { met: String(met), all: String(real.length) }),
        gatesTone(model, met === real.length && met > 0),
      ),
      row(
        words.stops,
        manner.counted(stops.length - unplanned, words.stopsAndDrills, { stops: String(unplanned) }),
        unplanned > 0 ? 'warn' : undefined,
      ),
      row(words.faults, String(faults.length), faults.length > 0 ? 'warn' : undefined),
      row(words.skips, String(skips.length), skips.length > 0 ? 'warn' : undefined),
      row(words.misheard, String(misheard.length)),
      ...(signing === null
        ? []
        : signing.device !== undefined || provedByKey(model.trust)
          ? [row(words.signature, words.signatureProved, 'good')]
          : [row(words.signature, words.signatureUnproved, 'warn')]),
      row(words.openItems, String(openItems.length), openItems.length > 0 ? 'bad' : 'good'),
    ],
  };
}

export function jobBlocks({ job, profile, startedAt, durationMs }: ReportModel, manner: Manner): Block[] {
  const { name } = manner;
  const words = manner.words.job;
  if (!job || !profile) return [{ type: 'text', tone: 'bad', text: words.unknown }];
  const fact = (label: string, text: string) => ({ label, value: { text } });
  return [
    {
      type: 'facts',
      rows: [
        fact(words.vehicle, job.vehicle),
        fact(words.engine, job.engine),
        fact(
          words.profile,
          profile.invented ? fill(words.inventedProfile, { name: profile.name }) : profile.name,
        ),
        fact(words.began, startedAt === null ? '' : dateTime(startedAt, manner)),
        fact(
          words.lasted,
          fill(words.lastedTime, { time: duration(durationMs, manner), clock: time(durationMs) }),
        ),
        fact(capital(name.person('technician')), job.technician),
        fact(capital(name.person('second')), job.second),
        fact(capital(name.person('supervisor')), job.supervisor),
        ...jobDetails.flatMap(detail => {
          const text = job[detail] ?? '';
          return text === '' ? [] : [fact(words.details[detail], text)];
        }),
      ],
    },
  ];
}
