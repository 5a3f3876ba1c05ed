import type { ReplyId } from '../../prompts/types.ts';
import type { Lamp } from '../../src/profile/schema.ts';
import { replyNeedsReadBack, weightOf } from '../assurance.ts';
import { watchedFaults } from '../faults.ts';
import { findingsAt } from '../findings.ts';
import { leaveOpen } from '../open-items.ts';
import { pass, stopFor } from '../progress.ts';
import type { InspectStep, LampsStep, SensorsStep, Step } from '../steps.ts';
import {
  type Effect,
  type Line,
  type Look,
  type Move,
  type Nodes,
  remark,
  speak,
  update,
  withMeta,
} from '../toolkit.ts';
import type { PromptValue } from '../vocabulary.ts';
import { questionLamp } from './bus.ts';
import { leftOpenHere, othersAt, troublesAt } from './found.ts';
import { actionsOf } from './nodes.ts';
import { askFor, askReply, readBack, readBackReply, type Trouble, type Waiting } from './question.ts';

interface Item {
  readonly id: string;
  readonly name: PromptValue;
  readonly ok: ReplyId;
  /** What a group calls the item, with the state that it should have where there are several. */
  readonly inGroup: PromptValue;
  readonly otherwise: readonly { readonly reply: ReplyId; readonly move: Move }[];
  /** What the bus may have against a reply; it comes before the reply counts. */
  readonly question?: Move;
  readonly trouble?: readonly Trouble[];
  /** Not as it should be, and let go by for now, with what else comes of it. */
  readonly letBy?: {
    readonly reply: ReplyId;
    readonly when: (look: Look) => boolean;
    readonly actions: readonly Effect[];
  };
  /** What may be found there and does not stop: after its read-back the list goes on with this. */
  readonly found?: readonly Effect[];
}

/** No more things are named at once than people keep in mind: see `Together` in steps.ts. */
export const MOST_TOGETHER = 4;

/** Items that stand side by side and are asked together, with a reply of their own. */
interface Part {
  readonly from: number;
  readonly to: number;
  readonly reply: ReplyId;
  readonly index: number;
  /** The reply names each of them. */
  readonly named?: true;
}

/** @param replies for the groups, in their order; too few of them, and the last items come one by one */
const partsOf = (count: number, replies: readonly ReplyId[]): Part[] =>
  groupsOf(count).flatMap((part, index) => {
    const reply = replies[index];
    return reply && count > 1 ? [{ ...part, reply, index }] : [];
  });

/** What stops at once, whichever of the things it was said of; where their causes differ, the cause is asked for. */
const anyTrouble = (items: readonly Item[]): Trouble[] => {
  const all = items.flatMap(({ trouble = [] }) => trouble);
  return [...new Set(all.map(({ reply }) => reply))].flatMap(reply => {
    const same = all.filter(each => each.reply === reply);
    const [first] = same;
    return first && same.every(({ cause }) => cause === first.cause) ? [first] : [{ reply, cause: null }];
  });
};

/** The fewest groups of at most four, of sizes as equal as can be: where each begins and ends. */
export function groupsOf(count: number): readonly { readonly from: number; readonly to: number }[] {
  const groups = Math.ceil(count / MOST_TOGETHER);
  return Array.from({ length: groups }, (_, index) => ({
    from: Math.round((index * count) / groups),
    to: Math.round(((index + 1) * count) / groups),
  }));
}

/** The list goes on beside what is let by. */
const letBy = ({ reply, when, actions }: NonNullable<Item['letBy']>, onward: readonly Move[]) =>
  onward.map(move => ({
    reply,
    move: {
      ...move,
      guard: (look: Look) => when(look) && (move.guard?.(look) ?? true),
      actions: [...actions, ...actionsOf(move)],
    },
  }));

const itemState = (index: number) => `item${index + 1}`;
const foundState = (index: number) => `found${index + 1}`;
const groupState = (index: number) => `group${index + 1}`;
const doorState = (index: number) => `${groupState(index)}Door`;

/** What was said by voice anywhere in the list has to be confirmed at its end. */
const keepMeans = update(({ context, event }) => ({
  misheard: 0,
  spokenInList: context.spokenInList || event.via === 'voice',
}));

/**
 * Goes through the items by name, in groups where there are replies for groups, else one by one; what was said by voice
 * is confirmed at the end, and "wrong" begins the list again.
 * @param parts what is asked together; all else comes one by one
 */
function checklistNodes(step: Step, items: readonly Item[], opening: Line, parts: readonly Part[]): Nodes {
  const done = pass(step);
  const anyOf: Waiting = {
    by: step.by,
    critical: false,
    looking: step.kind === 'inspect' && step.engine === 'running',
  };
  const weight = weightOf(step);
  const needsReadBack = replyNeedsReadBack(weight === 'nothing' ? 'limit' : weight);
  const heavy = (look: Look) => look.context.spokenInList || needsReadBack(look);
  const end = (move: Move = {}): Move[] => [
    { ...move, guard: heavy, target: 'readingBack', actions: [keepMeans, ...actionsOf(move)] },
    { ...move, target: done.target, actions: [...actionsOf(move), ...done.actions] },
  ];
  /** Where the list goes on at this item. */
  const to = (index: number): string => {
    const part = parts.find(({ from }) => from === index);
    return part ? doorState(part.index) : itemState(index);
  };
  const onTo = (index: number): Move[] =>
    index >= items.length ? end() : [{ target: to(index), actions: keepMeans }];

  const nodes: Nodes = {
    begin: {
      entry: [
        update(({ context }) => ({
          spokenInList: false,
          openItems: context.openItems.filter(item => item.step !== step.id),
        })),
        ...speak(opening),
      ],
      always: { target: to(0) },
    },
  };
  for (const { from, to: after, reply, index, named } of parts) {
    const own = items.slice(from, after);
    nodes[doorState(index)] = {
      always: [
        { guard: ({ context }) => context.oneByOne === step.id, target: itemState(from) },
        { target: groupState(index) },
      ],
    };
    const oneByOne = {
      target: itemState(from),
      actions: update(() => ({ oneByOne: step.id, misheard: 0 })),
    };
    // Whoever answers as to one thing has seen something: then each is asked for by itself.
    const single = [...new Set(own.flatMap(item => item.otherwise.map(row => row.reply)))];
    const question = askReply(
      { ...anyOf, trouble: anyTrouble(own), affirmed: { reply, always: false } },
      () => ({
        line: named ? 'togetherNamed' : 'together',
        values: { items: { list: own.map(item => item.inGroup) }, reply: { reply } },
      }),
      [
        ...own.flatMap(item => (item.question ? [{ reply, move: item.question }] : [])),
        ...onTo(after).map(move => ({ reply, move })),
        { reply: 'oneByOne', move: oneByOne },
        ...single.map(each => ({ reply: each, move: oneByOne })),
      ],
    );
    nodes[groupState(index)] = withMeta(question, { items: own.map(({ id }) => id) });
  }
  items.forEach((item, index) => {
    const waiting: Waiting = {
      ...anyOf,
      trouble: item.trouble,
      affirmed: item.otherwise.length > 0 && !item.found ? undefined : { reply: item.ok, always: false },
    };
    const asking = askReply(waiting, () => ({ line: 'item', values: { name: item.name } }), [
      ...(item.question ? [{ reply: item.ok, move: item.question }] : []),
      ...onTo(index + 1).map(move => ({ reply: item.ok, move })),
      ...item.otherwise.flatMap(row => [
        ...(item.question ? [{ reply: row.reply, move: item.question }] : []),
        ...(item.letBy?.reply === row.reply ? letBy(item.letBy, onTo(index + 1)) : []),
        row,
      ]),
    ]);
    nodes[itemState(index)] = withMeta(asking, { item: item.id });
    const { found } = item;
    if (found)
      nodes[foundState(index)] = readBack(
        waiting,
        readBackReply,
        onTo(index + 1).map(move => ({ ...move, actions: [...found, ...actionsOf(move)] })),
        { target: itemState(index) },
      );
  });
  nodes.readingBack = readBack(
    { ...anyOf, looking: false },
    () => {
      const [only] = items.length === 1 ? items : [];
      return only
        ? { line: 'readBackItem', values: { name: only.name, reply: { reply: only.ok } } }
        : { line: 'readBackList', values: { count: items.length, title: { step: step.id } } };
    },
    [done],
    { target: 'begin' },
  );
  return nodes;
}

/** Lit by a code of lesser weight, as the interview and the bus call them. */
const warningLamps: readonly string[] = ['amberWarning', 'malfunction'];
/** Lit while nothing is charged. */
const CHARGE_LAMP = 'charging';

export const isWarningLamp = ({ id }: Lamp): boolean => warningLamps.includes(id);

/**
 * Beside a running engine a warning lamp stays lit while a code stands that is watched: it is asked for once that has
 * cleared. A charge lamp may want more speed before the alternator excites: it is an open item, and the meter tells in the
 * running checks. Common practice, no published source.
 */
function litForNow(step: LampsStep, lamp: Lamp): Pick<Item, 'letBy'> {
  if (step.id !== 'firstFire.lamps' || lamp.running !== 'off') return {};
  if (isWarningLamp(lamp))
    return {
      letBy: {
        reply: 'lit',
        when: ({ context }) => watchedFaults(context).length > 0,
        actions: [remark(() => ({ line: 'litWhileWatched', values: { name: lamp.name } }))],
      },
    };
  if (lamp.id !== CHARGE_LAMP) return {};
  return {
    letBy: {
      reply: 'lit',
      when: () => true,
      actions: [
        remark(() => ({ line: 'chargeLampLit', values: {} })),
        ...leaveOpen(() => ({ step: step.id, finding: 'lit' })),
      ],
    },
  };
}

/** Lamp by lamp: lit or dark, against the state that the profile expects. */
export function lampsNodes(step: LampsStep): Nodes {
  const items = step.lamps.map((lamp): Item => {
    const expected = lamp[step.expected];
    const wrong: ReplyId = expected === 'on' ? 'dark' : 'lit';
    const right: ReplyId = expected === 'on' ? 'lit' : 'dark';
    const move: Move =
      step.wrong === 'again'
        ? {
            actions: [
              remark(() => ({
                line: 'lampWrong',
                values: { name: lamp.name, expected: { reply: right } },
              })),
            ],
          }
        : stopFor(step.wrong);
    return {
      id: lamp.id,
      name: lamp.name,
      ok: right,
      inGroup: { list: [lamp.name, { reply: right }], joined: 'plain' },
      otherwise: [{ reply: wrong, move }],
      ...litForNow(step, lamp),
      // With the key on, the lamp test lights lamps that the bus knows nothing of.
      question: questionLamp(lamp.id, lamp.name, step.expected === 'running', right),
    };
  });
  return checklistNodes(step, items, askFor(step), partsOf(items.length, step.groups));
}

/** Thing by thing, one word for each. */
export const sensorsNodes = (step: SensorsStep): Nodes =>
  checklistNodes(
    step,
    step.items.map(item => ({
      id: item.id,
      name: item.name,
      ok: step.ok,
      inGroup: item.name,
      otherwise: [],
    })),
    askFor(step),
    partsOf(step.items.length, step.groups),
  );

function inspectParts({ points, together }: InspectStep): Part[] {
  const from = points.findIndex(({ id }) => id === together?.from);
  return together && from >= 0
    ? [{ from, to: points.length, reply: together.ok, index: 0, named: true }]
    : [];
}

/** Point by point by the second person, leaks never together; whatever is wrong stops everything at once. */
export const inspectNodes = (step: InspectStep): Nodes =>
  checklistNodes(
    step,
    step.points.map((point, index) => ({
      id: point.id,
      name: { point: point.id },
      ok: 'pointGood',
      inGroup: { point: point.id },
      otherwise: othersAt(step, point.id, foundState(index)),
      trouble: troublesAt(step, point.id, point.cause),
      ...(findingsAt[point.id].some(({ does }) => does === 'open')
        ? { found: leftOpenHere(step, point.id) }
        : {}),
    })),
    askFor(step),
    inspectParts(step),
  );
