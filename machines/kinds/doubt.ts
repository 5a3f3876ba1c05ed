import type { LineId } from '../../prompts/types.ts';
import { quantities } from '../../src/engineering/quantities/table.ts';
import type { Context } from '../context.ts';
import { judgementData, limitsOf } from '../judging.ts';
import { judgeSpoken } from '../limits/agreement.ts';
import { canBeRead } from '../limits/gauges.ts';
import { type Doubt, whyDoubted } from '../limits/plausible.ts';
import { believed } from '../progress.ts';
import type { EngineState, Step } from '../steps.ts';
import {
  atMs,
  type Line,
  type Look,
  type Move,
  type Node,
  type Nodes,
  note,
  remark,
  speak,
  update,
} from '../toolkit.ts';
import { type Person, type Quantity, quantityUnits } from '../vocabulary.ts';
import { setValueAside } from './bus.ts';
import { askValue, isReply } from './question.ts';

/** The step as far as a doubt asks for it. */
type Asked = Pick<Step, 'id' | 'by'> & { readonly engine: EngineState };

const valueIn = ({ event }: Look, quantity: Quantity): number | null =>
  event.type === 'value' && event.quantity === quantity ? event.si : null;

/** Both read by people off a gauge: they agree while each is within its tolerance of the truth. */
const agree = (quantity: Quantity, one: number, other: number) =>
  Math.abs(one - other) <= 2 * quantities[quantity].tolerance;

/** What speaks against the value that was just said or shown. */
function doubtIn(step: Asked, quantity: Quantity, look: Look): Doubt | null {
  const si = valueIn(look, quantity);
  if (si === null) return null;
  return whyDoubted(look.context, { quantity, si, atMs: atMs(look.event), engine: step.engine });
}

/**
 * Another means of reading: the bus shows the same. Of an engine that stands it does not count: a sensor that has
 * lost its coolant is read by both.
 */
function busVouches(step: Asked, quantity: Quantity, look: Look): boolean {
  const { event } = look;
  if (event.type !== 'value' || event.via === 'bus' || step.engine === 'off') return false;
  return judgeSpoken(quantity, event.si, event.bus?.si)?.met === true;
}

const noteDoubt = (step: Asked, quantity: Quantity) =>
  note(look => {
    const doubt = doubtIn(step, quantity, look);
    return {
      kind: 'doubted',
      data: {
        step: step.id,
        quantity,
        value: valueIn(look, quantity),
        unit: quantityUnits[quantity],
        ...(look.event.via === 'bus' ? { via: 'bus' as const } : {}),
        ...judgementData(doubt ? { ok: true, value: doubt.verdict } : null),
      },
    };
  });

const doubtLine =
  (step: Asked, quantity: Quantity): Line =>
  look => {
    const doubt = doubtIn(step, quantity, look);
    const si = valueIn(look, quantity);
    if (!doubt || si === null) return { line: 'unclear', values: {} };
    return {
      line: look.event.via === 'bus' ? 'doubtedBus' : 'doubted',
      values: {
        name: { quantityName: quantity },
        spoken: { quantity, si },
        limits: limitsOf({ ok: true, value: doubt.verdict }, quantity),
        why: { line: doubt.why, values: doubt.values },
      },
    };
  };

/** The value that was said or shown. */
const claimed = (quantity: Quantity, look: Look): Context['doubted'] => ({
  quantity,
  si: valueIn(look, quantity) ?? Number.NaN,
});

/** Who reads a value that somebody keeps to, where, and how they are asked: nobody vouches for their own. */
const vouchers: readonly {
  readonly by: Person;
  readonly state: 'vouching' | 'vouchingByTechnician';
  readonly ask: LineId;
  readonly claimedBy: (person: Person) => boolean;
}[] = [
  { by: 'second', state: 'vouching', ask: 'vouchAsk', claimedBy: person => person !== 'second' },
  {
    by: 'technician',
    state: 'vouchingByTechnician',
    ask: 'vouchAskTechnician',
    claimedBy: person => person === 'second',
  },
];

/**
 * What can hardly be true is questioned once, and said again it goes to the other person: nobody's word alone makes
 * it true. A value that stops the engine comes first: no doubt holds it up.
 */
export function doubtMoves(step: Asked, quantity: Quantity): Move[] {
  const doubtful = (look: Look) =>
    doubtIn(step, quantity, look) !== null && !busVouches(step, quantity, look);
  const isBus = ({ event }: Look) => event.via === 'bus';
  const before = ({ context }: Look) => (context.doubted?.quantity === quantity ? context.doubted : null);
  const again = (look: Look) => {
    const doubted = before(look);
    const si = valueIn(look, quantity);
    return doubted !== null && si !== null && agree(quantity, doubted.si, si);
  };
  return [
    // The bus goes on showing it; it was questioned once, and people are asked.
    { guard: look => isBus(look) && doubtful(look) && before(look) !== null, actions: [] },
    ...vouchers.map(({ state, claimedBy }) => ({
      guard: (look: Look) => !isBus(look) && doubtful(look) && again(look) && claimedBy(look.event.by),
      target: state,
      actions: update(look => ({ doubted: claimed(quantity, look), misheard: 0 })),
    })),
    {
      guard: doubtful,
      actions: [
        noteDoubt(step, quantity),
        update(look => ({ doubted: claimed(quantity, look) })),
        ...speak(doubtLine(step, quantity)),
      ],
    },
  ];
}

/**
 * The other person reads it too, best by another means; what agrees goes on to its read-back, what does not is asked
 * for from the beginning.
 * @param agreed where a value that agrees leads
 * @param danger where one that stops the engine leads, whether it agrees or not
 */
export const vouchingNodes = (
  step: Asked,
  quantity: Quantity,
  agreed: string,
  danger: readonly Move[] = [],
): Nodes =>
  Object.fromEntries(
    vouchers.map(voucher => [voucher.state, vouchingNode(voucher, step, quantity, agreed, danger)]),
  );

function vouchingNode(
  { by, ask }: (typeof vouchers)[number],
  step: Asked,
  quantity: Quantity,
  agreed: string,
  danger: readonly Move[],
): Node {
  const node = askValue(
    { by, critical: false },
    () => ({
      line: ask,
      values: { name: { quantityName: quantity }, unit: { unitOf: quantity } },
    }),
    quantity,
    { target: agreed },
  );
  const read = (look: Look) => {
    const si =
      look.event.by === by && look.event.via !== 'bus' && believed(look) ? valueIn(look, quantity) : null;
    return si !== null && canBeRead(quantity, si) ? si : null;
  };
  const same = (look: Look) => {
    const si = read(look);
    const { doubted } = look.context;
    return si !== null && doubted !== null && agree(quantity, doubted.si, si);
  };
  return {
    ...node,
    on: {
      ...node.on,
      value: [
        ...danger.map(move => ({
          ...move,
          guard: (look: Look) => {
            const si = valueIn(look, quantity);
            return si !== null && canBeRead(quantity, si) && (move.guard?.(look) ?? true);
          },
        })),
        {
          guard: same,
          target: agreed,
          actions: [
            setValueAside,
            note(look => ({
              kind: 'vouched',
              data: {
                step: step.id,
                quantity,
                value: read(look),
                before: look.context.doubted?.si ?? null,
                unit: quantityUnits[quantity],
                by: look.event.by,
              },
            })),
          ],
        },
        {
          guard: look => read(look) !== null,
          target: 'asking',
          actions: [
            remark(look => ({
              line: 'readingsDiffer',
              values: {
                name: { quantityName: quantity },
                before: { quantity, si: look.context.doubted?.si ?? 0 },
                now: { quantity, si: read(look) ?? 0 },
              },
            })),
            update(() => ({ doubted: null })),
          ],
        },
      ],
      reply: [{ guard: isReply('notYet'), target: 'asking', actions: update(() => ({ doubted: null })) }],
    },
  };
}
