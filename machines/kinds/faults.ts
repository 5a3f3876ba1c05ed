import type { LineId, ReplyId, StepId } from '../../prompts/types.ts';
import { replyNeedsReadBack } from '../assurance.ts';
import type { Context } from '../context.ts';
import type { Code } from '../events.ts';
import { blockingFaults, type JudgedFault, judgeSessionFault, unknownFaults } from '../faults.ts';
import { believed, pass, stopFor } from '../progress.ts';
import type { FaultsStep } from '../steps.ts';
import {
  atMs,
  type Effect,
  type Line,
  type Look,
  type Move,
  type Node,
  type Nodes,
  note,
  remark,
  speak,
  update,
  withMeta,
} from '../toolkit.ts';
import {
  askFor,
  askReply,
  askValue,
  isReason,
  isReply,
  isSupervisor,
  noReason,
  notUnderstood,
  readBack,
  readBackReply,
  setAside,
  type Waiting,
} from './question.ts';

const lineOf = ({ decision }: JudgedFault): LineId =>
  decision?.decision === 'watch'
    ? 'codeWatch'
    : decision?.decision === 'mayGoOn'
      ? 'codeGoOn'
      : decision?.because === 'unknown'
        ? 'codeUnknown'
        : 'codeBlocks';

const codeValues = (judged: JudgedFault) => ({
  spn: judged.fault.spn,
  fmi: judged.fault.fmi,
  meaning: judged.code ? { failureMode: judged.code.fmi.number } : '',
  because: judged.because,
  time: { unit: 's' as const, si: judged.decision?.decision === 'watch' ? judged.decision.leftS : 0 },
});

const latest = ({ context, event }: Look): JudgedFault | null => {
  const fault = context.faults.at(-1);
  return fault ? judgeSessionFault(context, fault, atMs(event)) : null;
};

const sayLatest: Line = look => {
  const judged = latest(look);
  return judged ? { line: lineOf(judged), values: codeValues(judged) } : { line: 'unclear', values: {} };
};

/** What a watched code is waited for in, and the lamp that it lights. */
const watchSteps: readonly StepId[] = ['firstFire.transient', 'firstFire.warningLamp'];

/** A new code has its own watch, though that of an earlier one is over. */
const watchedAnew = ({ done, watchesBegan }: Context): Pick<Context, 'done' | 'watchesBegan'> => ({
  done: done.filter(id => !watchSteps.includes(id)),
  watchesBegan: Object.fromEntries(
    Object.entries(watchesBegan).filter(([id]) => !watchSteps.some(watch => watch === id)),
  ),
});

/** The second number completes the code; one that was read before keeps the time it was first seen. */
const keepCode = update(({ context, event }) => {
  const { pending, spokenSpn } = context;
  if (pending?.kind !== 'value' || spokenSpn === null) return {};
  const same = (fault: { spn: number; fmi: number }) => fault.spn === spokenSpn && fault.fmi === pending.si;
  const earlier = context.earlierFaults.find(same);
  return {
    spokenSpn: null,
    misheard: 0,
    ...(earlier ? {} : watchedAnew(context)),
    faults: [
      ...context.faults.filter(fault => !same(fault)),
      earlier ?? { spn: spokenSpn, fmi: pending.si, seenMs: atMs(event) },
    ],
  };
});

/** A round that was broken off tells nothing about the codes that it did not come to. */
const newRound = update(({ context: { faults, earlierFaults } }) => ({
  earlierFaults: [
    ...faults,
    ...earlierFaults.filter(({ spn, fmi }) => !faults.some(fault => fault.spn === spn && fault.fmi === fmi)),
  ],
  faults: [],
}));

const codesOf = ({ event }: Look): readonly Code[] | undefined =>
  event.type === 'codes' ? event.codes : event.type === 'reply' ? event.bus?.codes : undefined;

/** Codes that the bus shows and that have not been read in this round. */
const unread = (look: Look): readonly Code[] =>
  (codesOf(look) ?? []).filter(
    ({ spn, fmi }) => !look.context.faults.some(fault => fault.spn === spn && fault.fmi === fmi),
  );

/** Codes that came all at once, from the bus, besides those that were read. */
const keepAll = update(look => {
  const { context, event } = look;
  const shown = unread(look).map(
    ({ spn, fmi }) =>
      context.earlierFaults.find(fault => fault.spn === spn && fault.fmi === fmi) ?? {
        spn,
        fmi,
        seenMs: atMs(event),
      },
  );
  const isNew = shown.some(fault => !context.earlierFaults.includes(fault));
  return {
    faults: [...context.faults, ...shown],
    ...(isNew ? watchedAnew(context) : {}),
  };
});

/** That there are no codes, or no more, is not believed while the bus shows one that was not read. */
const heldAgainstBus = (step: FaultsStep, spoken: 'noCodes' | 'noMoreCodes') => ({
  reply: spoken,
  move: {
    guard: (look: Look) => unread(look).length > 0,
    target: 'busReadBack',
    actions: [
      note(look => ({ kind: 'disagreement', data: { step: step.id, spoken, bus: codesOf(look) ?? [] } })),
      keepAll,
    ],
  },
});

const endRound = update(() => ({ earlierFaults: [] }));

const accept = update(({ context, event }) => {
  const reason =
    event.type === 'reason' ? event.text : context.pending?.kind === 'reply' ? context.pending.id : '';
  const unknown = unknownFaults(context, atMs(event)).map(row => row.fault);
  return {
    misheard: 0,
    faults: context.faults.map(fault => (unknown.includes(fault) ? { ...fault, accepted: reason } : fault)),
  };
});

export const reasonReplies: readonly ReplyId[] = ['reasonNotFitted', 'reasonDoneBefore', 'reasonSupervisor'];

/** On to the judgement: by voice only behind the read-back. */
const whenSure = (reply: ReplyId, readBack: string, end: Effect) => [
  { reply, move: { guard: replyNeedsReadBack('limit'), target: readBack, actions: setAside(reply) } },
  { reply, move: { target: 'judging', actions: [setAside(reply), end] } },
];

/** Codes are read number by number, read back, decoded and judged; a blocking one holds the gate shut. */
export function faultsNodes(step: FaultsStep): Nodes {
  const waiting: Waiting = { by: step.by, critical: false };
  const supervisor: Waiting = { by: 'supervisor', critical: false };
  const done = pass(step);
  const blocked = ({ context, event }: Look) => blockingFaults(context, atMs(event));
  const hasUnknown = ({ context, event }: Look) => unknownFaults(context, atMs(event)).length > 0;
  const runs = step.engine === 'running';
  const stop = stopFor('faultCode');
  /** Nothing is repaired beside a running engine: what blocks stops it, and only an unknown code waits for the supervisor. */
  const stopsIt: Move = {
    ...stop,
    guard: look => runs && blocked(look).length > unknownFaults(look.context, atMs(look.event)).length,
  };

  const blocks: Line = look => ({
    line: runs ? 'unknownRunning' : 'blockingFault',
    values: { fault: { list: blocked(look).map(({ fault }) => ({ code: fault })) } },
  });
  const understood = update(() => ({ misheard: 0 }));
  const blockedNode: Node = {
    meta: { replies: ['ready', 'acceptFault'], by: step.by, awaits: 'repair' },
    entry: [...speak(blocks)],
    on: {
      reply: [
        { guard: look => isReply('ready')(look) && believed(look), target: 'begin', actions: understood },
        {
          guard: look => isReply('acceptFault')(look) && believed(look) && hasUnknown(look),
          target: 'accepting',
          actions: understood,
        },
      ],
      unclear: notUnderstood(blocks, step.by),
    },
  };

  const accepting = askReply(
    supervisor,
    () => ({ line: 'acceptWhy', values: {} }),
    reasonReplies.map(reply => ({ reply, move: { target: 'acceptReadBack', actions: setAside(reply) } })),
  );

  return {
    begin: { always: { target: 'asking', actions: newRound } },
    asking: withMeta(
      takeCodes(
        askReply(waiting, askFor(step), [
          heldAgainstBus(step, 'noCodes'),
          ...whenSure('noCodes', 'readingBack', endRound),
          { reply: 'readACode', move: { target: 'spn' } },
        ]),
      ),
      { measures: 'codes', awaits: 'codes' },
    ),
    busReadBack: readBack(
      waiting,
      ({ context }) =>
        context.faults.length === 0
          ? { line: 'readBackBusNoCodes', values: {} }
          : { line: 'readBackBusCodes', values: { codes: { list: context.faults.map(code => ({ code })) } } },
      [{ target: 'judging', actions: [noteFault(step), endRound] }],
      { target: 'begin' },
    ),
    readingBack: readBack(waiting, readBackReply, [{ target: 'judging', actions: endRound }], {
      target: 'asking',
    }),
    spn: withMeta(
      askValue(waiting, () => ({ line: 'codeSpn', values: {} }), 'suspectParameter', {
        target: 'fmi',
        actions: update(({ event }) => (event.type === 'value' ? { spokenSpn: event.si } : {})),
      }),
      { awaits: 'spn' },
    ),
    fmi: withMeta(
      askValue(waiting, () => ({ line: 'codeFmi', values: {} }), 'failureMode', {
        target: 'codeReadBack',
      }),
      { awaits: 'fmi' },
    ),
    codeReadBack: readBack(
      waiting,
      ({ context }) => ({
        line: 'readBackCode',
        values: {
          spn: { digits: context.spokenSpn ?? 0 },
          fmi: context.pending?.kind === 'value' ? context.pending.si : 0,
        },
      }),
      [{ target: 'judgingCode', actions: [keepCode, remark(sayLatest), noteFault(step)] }],
      { target: 'spn' },
      'failureMode',
    ),
    // Before the next code is asked for.
    judgingCode: { always: [stopsIt, { target: 'another' }] },
    another: withMeta(
      askReply(waiting, () => ({ line: 'anotherCode', values: {} }), [
        { reply: 'readACode', move: { target: 'spn' } },
        heldAgainstBus(step, 'noMoreCodes'),
        ...whenSure('noMoreCodes', 'lastReadBack', endRound),
      ]),
      { awaits: 'anotherCode' },
    ),
    lastReadBack: readBack(waiting, readBackReply, [{ target: 'judging', actions: endRound }], {
      target: 'another',
    }),
    judging: {
      always: [stopsIt, { guard: look => blocked(look).length > 0, target: 'blocked' }, done],
    },
    blocked: blockedNode,
    accepting: {
      ...withMeta(accepting, { freeText: true }),
      on: {
        ...accepting.on,
        reason: [
          {
            guard: look => isSupervisor(look) && isReason(look),
            target: 'judging',
            actions: [accept, noteFault(step)],
          },
          {
            guard: look => !isSupervisor(look),
            actions: remark(() => ({ line: 'onlySupervisor', values: {} })),
          },
          noReason,
        ],
      },
    },
    acceptReadBack: readBack(
      supervisor,
      readBackReply,
      [{ target: 'judging', actions: [accept, noteFault(step)] }],
      { target: 'accepting' },
    ),
  };
}

/** The question also takes all codes at once, from the bus; somebody still has to say that they are right. */
const takeCodes = (question: Node): Node => ({
  ...question,
  on: {
    ...question.on,
    codes: {
      guard: ({ context, event }) =>
        event.via === 'bus' && context.profile.bus !== undefined && context.misheard === 0,
      target: 'busReadBack',
      actions: keepAll,
    },
  },
});

const noteFault = (step: FaultsStep) =>
  note(look => ({
    kind: 'faults',
    data: {
      step: step.id,
      faults: look.context.faults.map(fault => {
        const judged = judgeSessionFault(look.context, fault, atMs(look.event));
        return {
          spn: fault.spn,
          fmi: fault.fmi,
          meaning: judged.code?.fmi.text ?? null,
          decision: judged.decision?.decision ?? 'blocks',
          ...(fault.accepted ? { accepted: fault.accepted } : {}),
        };
      }),
    },
  }));
