import { duration, time } from '../format.ts';
import type { ReportModel, Trust } from '../model.ts';
import { capital, count, nameOf } from '../names.ts';
import { phaseIds } from '../story/phases.ts';
import type { Block, Tone } from './blocks.ts';

/** Whether the record can be believed: always the first thing said. */
export function trustBlocks(trust: Trust): Block[] {
  if (!trust.sound) {
    return [
      {
        type: 'banner',
        tone: 'bad',
        text: `NOT VERIFIED: this record is not as it was written. ${trust.fault ?? 'It holds no whole entry.'}`,
        detail: `The report shows only the ${count(trust.entries, 'entry', 'entries')} before the fault. It is no proof of anything after it.`,
      },
    ];
  }
  const wrong = trust.signatures.filter(({ valid }) => !valid);
  const blocks: Block[] = [];
  for (const { sentence } of wrong)
    blocks.push({ type: 'banner', tone: 'bad', text: `NOT VERIFIED: ${sentence}` });
  if (trust.replayFault !== undefined)
    blocks.push({ type: 'banner', tone: 'bad', text: `NOT CONFIRMED: ${trust.replayFault}` });
  if (blocks.length > 0) return blocks;
  const signed = trust.signatures.map(({ role }) => role);
  return [
    {
      type: 'banner',
      tone: 'good',
      text: `Verified: ${trust.entries === 1 ? 'the one entry is' : `all ${trust.entries} entries are`} chained as written${signed.length > 0 ? `, and signed with the key of the ${signed.join(' and of the ')}` : ''}.`,
    },
  ];
}

const phasePlace = (phase: string) => {
  const index = phaseIds.indexOf(phase);
  return index < 0
    ? 'before its first step'
    : `in phase ${index + 1} of ${phaseIds.length}, ${nameOf.phase(phase)}`;
};

export interface OutcomeLine {
  readonly text: string;
  readonly tone: Tone;
}

/** The whole session in one line; what could not be confirmed is said as what the record says. */
export function outcomeOf(model: ReportModel): OutcomeLine {
  const line = plainOutcome(model);
  if (model.trust.sound && model.trust.replayFault === undefined) return line;
  return {
    text: `As the record says, not confirmed: ${line.text}`,
    tone: line.tone === 'good' ? 'warn' : line.tone,
  };
}

function plainOutcome(model: ReportModel): OutcomeLine {
  const { outcome, gates, stops, openItems, durationMs, lastPhase } = model;
  const unmet = gates.filter(({ gate, met }) => gate !== null && !met).length;
  const unplanned = stops.filter(({ drill }) => !drill);
  const after = `after ${duration(durationMs)}`;
  switch (outcome.kind) {
    case 'nothing':
      return { text: 'Nothing happened: the record holds no step of a start-up.', tone: 'warn' };
    case 'signedOff': {
      const facts = [
        unmet === 0
          ? `all ${count(gates.filter(({ gate }) => gate !== null).length, 'gate')} met`
          : `${count(unmet, 'gate')} NOT met`,
        unplanned.length === 0 ? 'no stop but the drills' : count(unplanned.length, 'stop'),
        openItems.length === 0 ? 'nothing left open' : count(openItems.length, 'open item'),
      ];
      const sound = unmet === 0 && openItems.length === 0;
      return { text: `Signed off ${after}: ${facts.join(', ')}.`, tone: sound ? 'good' : 'warn' };
    }
    case 'ended':
      return {
        text: `Ended without sign-off ${after}, ${phasePlace(lastPhase)}${causeOf(unplanned)}. ${ran(model)}`,
        tone: 'bad',
      };
    case 'open':
      return {
        text: outcome.stopped
          ? `Stopped and not gone on with ${after}, ${phasePlace(lastPhase)}${causeOf(unplanned)}. ${ran(model)}`
          : `Not finished: the record breaks off ${after}, ${phasePlace(lastPhase)}. ${ran(model)}`,
        tone: 'bad',
      };
  }
}

const causeOf = (stops: ReportModel['stops']) => {
  const last = stops.at(-1);
  return last ? `: ${last.cause === null ? 'no cause was given' : nameOf.cause(last.cause)}` : '';
};

function ran({ timeLine: { engine }, readings }: ReportModel): string {
  if (engine === null) return 'Whether the engine ran cannot be told.';
  const running = engine.filter(span => span.engine === 'running');
  if (running.length === 0) {
    const turned = readings.some(({ quantity, si }) => quantity === 'engineSpeed' && si > 0);
    return turned
      ? 'Engine speed was read, but in no step in which the engine runs.'
      : 'The engine did not run.';
  }
  const ranMs = running.reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0);
  return `The engine ran for ${duration(ranMs)}.`;
}

const gatesTone = ({ trust }: ReportModel, all: boolean): Tone =>
  all ? (trust.sound && trust.replayFault === undefined ? 'good' : 'warn') : 'bad';

/** What matters most, counted, for who reads no further. */
export function figuresAtAGlance(model: ReportModel): Block {
  const { timeLine, faults, misheard, stops, gates, openItems, skips } = model;
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
  return {
    type: 'facts',
    rows: [
      row(
        'Engine ran',
        timeLine.engine === null
          ? 'cannot be told'
          : first
            ? `${duration(ranMs)}, from ${time(first.fromMs)}`
            : 'in no step',
      ),
      row('Gates met', `${met} of ${real.length}`, gatesTone(model, met === real.length && met > 0)),
      row(
        'Stops',
        `${unplanned} (and ${count(stops.length - unplanned, 'drill')})`,
        unplanned > 0 ? 'warn' : undefined,
      ),
      row('Fault codes', String(faults.length), faults.length > 0 ? 'warn' : undefined),
      row('Skipped steps', String(skips.length), skips.length > 0 ? 'warn' : undefined),
      row('Not understood at first', String(misheard.length)),
      row('Open items', String(openItems.length), openItems.length > 0 ? 'bad' : 'good'),
    ],
  };
}

export function jobBlocks(
  { job, profile, startedAt, durationMs }: ReportModel,
  when: (at: string) => string,
): Block[] {
  if (!job || !profile)
    return [
      {
        type: 'text',
        tone: 'bad',
        text: 'The record does not begin like a session of this version: vehicle, people and engine profile cannot be told.',
      },
    ];
  const fact = (label: string, text: string) => ({ label, value: { text } });
  return [
    {
      type: 'facts',
      rows: [
        fact('Vehicle', job.vehicle),
        fact('Engine', job.engine),
        fact('Profile', `${profile.name}${profile.invented ? ' (invented, for practice)' : ''}`),
        fact('Began', startedAt === null ? '' : when(startedAt)),
        fact('Lasted', `${duration(durationMs)} (${time(durationMs)})`),
        fact(capital(nameOf.person('technician')), job.technician),
        fact(capital(nameOf.person('second')), job.second),
        fact(capital(nameOf.person('supervisor')), job.supervisor),
      ],
    },
  ];
}
