import type { ReplyId } from '../../prompts/types.ts';
import { pass, stopFor } from '../progress.ts';
import type { InspectStep, LampsStep, SensorsStep, Step } from '../steps.ts';
import { type Line, type Move, type Nodes, remark, speak, withMeta } from '../toolkit.ts';
import type { Cause, PromptValue } from '../vocabulary.ts';
import { questionLamp } from './bus.ts';
import { askFor, askReply, readBack, type Waiting } from './question.ts';

interface Item {
  readonly id: string;
  readonly name: PromptValue;
  readonly ok: ReplyId;
  /** What the summary calls the item, with its state where it has one. */
  readonly summary: PromptValue;
  readonly otherwise: readonly { readonly reply: ReplyId; readonly move: Move }[];
  /** What the bus may have against a reply; it comes before the reply counts. */
  readonly question?: Move;
  readonly trouble?: { readonly reply: ReplyId; readonly cause: Cause };
}

const itemState = (index: number) => `item${index + 1}`;

/** Goes through the items by name, then reads all of them back at once; "wrong" begins the list again. */
function checklistNodes(step: Step, items: readonly Item[], opening: Line): Nodes {
  const done = pass(step);
  const nodes: Nodes = {
    begin: { entry: [...speak(opening)], always: { target: itemState(0) } },
  };
  items.forEach((item, index) => {
    const waiting: Waiting = { by: step.by, critical: false, trouble: item.trouble };
    const next = index + 1 < items.length ? itemState(index + 1) : 'readingBack';
    const asking = askReply(waiting, () => ({ line: 'item', values: { name: item.name } }), [
      ...[{ reply: item.ok, move: { target: next } }, ...item.otherwise].flatMap(row =>
        item.question ? [{ reply: row.reply, move: item.question }, row] : [row],
      ),
    ]);
    nodes[itemState(index)] = withMeta(asking, { item: item.id });
  });
  nodes.readingBack = readBack(
    { by: step.by, critical: false },
    () => ({
      line: 'readBackList',
      values: { count: items.length, items: { list: items.map(item => item.summary) } },
    }),
    [done],
    { target: itemState(0) },
  );
  return nodes;
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
      summary: { list: [lamp.name, { reply: right }], joined: 'plain' },
      otherwise: [{ reply: wrong, move }],
      // With the key on, the lamp test lights lamps that the bus knows nothing of.
      question: questionLamp(lamp.id, lamp.name, step.expected === 'running'),
    };
  });
  return checklistNodes(step, items, askFor(step));
}

/** Thing by thing, one word for each. */
export const sensorsNodes = (step: SensorsStep): Nodes =>
  checklistNodes(
    step,
    step.items.map(item => ({
      id: item.id,
      name: item.name,
      ok: step.ok,
      summary: item.name,
      otherwise: [],
    })),
    askFor(step),
  );

/** Point by point by the second person; whatever is wrong stops everything at once. */
export const inspectNodes = (step: InspectStep): Nodes =>
  checklistNodes(
    step,
    step.points.map(point => ({
      id: point.id,
      name: { point: point.id },
      ok: 'pointGood',
      summary: { point: point.id },
      otherwise: [],
      trouble: { reply: 'leak', cause: point.cause },
    })),
    askFor(step),
  );
