import type { Verdict } from '../../src/engineering/result.ts';
import { switchedOff } from '../controls.ts';
import { cutOffOf } from '../cut-off.ts';
import { isOutside, keepReading, noteVerdict, sayVerdict } from '../judging.ts';
import { isBusQuantity, judgeSpoken } from '../limits/agreement.ts';
import { canBeRead } from '../limits/gauges.ts';
import type { Judge } from '../steps.ts';
import { type Effect, type Look, type Move, note, remark, speak, update } from '../toolkit.ts';
import type { Quantity } from '../vocabulary.ts';

/** The engine turns: a stopped one shows no speed, and a starter turns it faster than this. */
export const TURNING_RPM = 50;

/** A value of the bus that may stand unspoken; where something was misunderstood, only people are heard. */
export const isFromBus =
  (quantity: Quantity) =>
  (look: Look): boolean =>
    look.context.misheard === 0 && isOnBus(quantity)(look);

/** A value that this bus may give unspoken: enough for one that stops the engine, whatever was misunderstood. */
export const isOnBus =
  (quantity: Quantity) =>
  ({ context, event }: Look): boolean => {
    const { bus } = context.profile;
    return (
      event.type === 'value' &&
      event.via === 'bus' &&
      event.quantity === quantity &&
      canBeRead(quantity, event.si) &&
      isBusQuantity(quantity) &&
      bus?.readings.includes(quantity) === true &&
      !bus.spoken.includes(quantity)
    );
  };

/** True only for a value that the rule can judge and that is inside its limits. */
export const valueMeets =
  (judge: Judge) =>
  ({ context, event }: Look): boolean => {
    if (event.type !== 'value') return false;
    const judgement = judge(context, event.si, event.atMs);
    return judgement.ok && judgement.value.met;
  };

/** True only for a value that the rule can judge and that is outside its limits. */
export const valueBreaks =
  (judge: Judge) =>
  ({ context, event }: Look): boolean =>
    event.type === 'value' && isOutside(judge(context, event.si, event.atMs));

/** Puts a value aside, with where it came from and what contradicts it. */
export const setValueAside = update(look => {
  const { event } = look;
  if (event.type !== 'value') return {};
  const { quantity, si } = event;
  const busSi = contradictedBy(look);
  return {
    pending: {
      kind: 'value',
      quantity,
      si,
      ...(event.via === 'bus' ? { byBus: true as const } : {}),
      ...(busSi === undefined ? {} : { busSi }),
    },
  };
});

/** Keeps a value that nobody said, with the verdict on it on the record and aloud. */
export const judgedByBus = (judge: Judge, say = sayVerdict): Effect[] => [
  setValueAside,
  noteVerdict(judge),
  remark(look => ({ ...say(judge)(look), prefix: 'fromBus' })),
  keepReading,
];

const disagreement = ({ event }: Look) => {
  if (event.type !== 'value' || event.via === 'bus') return null;
  const verdict = judgeSpoken(event.quantity, event.si, event.bus?.si);
  return verdict && !verdict.met ? verdict : null;
};

const contradictedBy = (look: Look): number | undefined =>
  disagreement(look) && look.event.type === 'value' ? look.event.bus?.si : undefined;

/** What was said differs from what the bus shows: then somebody has to confirm it, by whatever means it came. */
export const isContradicted = (look: Look): boolean => disagreement(look) !== null;

/** Names a spoken value: said once more just so, it is the same. */
export const keyOfValue = ({ event }: Look) =>
  event.type === 'value' ? `${event.quantity} ${event.si}` : null;

type ValueEvent = Extract<Look['event'], { type: 'value' }>;

/** Puts a difference on the record: what was said, what it was held against, and how far apart the two may be. */
export const noteDifference = (
  verdictOf: (look: Look) => Verdict | null,
  against: (event: ValueEvent) => { readonly bus?: number | undefined; readonly heard?: number | undefined },
) =>
  note(look => {
    const { context, event } = look;
    const verdict = verdictOf(look);
    return {
      kind: 'disagreement',
      data: {
        step: context.step,
        ...(event.type === 'value' ? { quantity: event.quantity, spoken: event.si, ...against(event) } : {}),
        ...(verdict ? { unit: verdict.unit, allowed: verdict.max, rule: verdict.rule.id } : {}),
      },
    };
  });

const noteBusDifference = noteDifference(disagreement, event => ({ bus: event.bus?.si }));

/** A value that the bus contradicts is questioned; said again just so, it goes on to a read-back with both. */
export const questionValue: Move = {
  guard: look => disagreement(look) !== null && look.context.questioned !== keyOfValue(look),
  actions: [
    noteBusDifference,
    update(look => ({ questioned: keyOfValue(look) })),
    ...speak(({ event }) => ({
      line: 'busDiffers',
      values:
        event.type === 'value'
          ? {
              name: { quantityName: event.quantity },
              spoken: { quantity: event.quantity, si: event.si },
              bus: { quantity: event.quantity, si: event.bus?.si ?? event.si },
            }
          : {},
    })),
  ],
};

/**
 * A lamp was said to be what the bus says it is not.
 * @param unlitCounts an unlit lamp on the bus means something
 * @param right the state that is said of it by a reply for a whole group
 */
export function questionLamp(id: string, name: string, unlitCounts: boolean, right: 'lit' | 'dark'): Move {
  const seen = ({ event }: Look) => (event.type === 'reply' ? event.bus?.lamps?.[id] : undefined);
  const saidOf = ({ event }: Look) =>
    event.type === 'reply' && (event.id === 'lit' || event.id === 'dark') ? event.id : right;
  const key = ({ event }: Look) => (event.type === 'reply' ? `${id} ${event.id}` : null);
  return {
    guard: look => {
      const lamp = seen(look);
      if (lamp === undefined || look.event.type !== 'reply' || lamp === saidOf(look)) return false;
      return (lamp === 'lit' || unlitCounts) && look.context.questioned !== key(look);
    },
    actions: [
      note(look => ({
        kind: 'disagreement',
        data: { step: look.context.step, lamp: id, spoken: saidOf(look), bus: seen(look) ?? null },
      })),
      update(look => ({ questioned: key(look) })),
      remark(look => ({
        line: 'lampDiffers',
        values: { name, spoken: { reply: saidOf(look) }, bus: { reply: seen(look) ?? '' } },
      })),
    ],
  };
}

/** Said to stand while the bus shows that it turns: that is never believed, and what stops it is called out. */
export const refuseTurning: Move = {
  guard: ({ event }) => event.type === 'reply' && (event.bus?.speedRpm ?? 0) >= TURNING_RPM,
  actions: remark(({ context, event }) => ({
    line: 'stillTurns',
    values: {
      speed: { unit: 'rpm', si: (event.type === 'reply' && event.bus?.speedRpm) || 0 },
      off: switchedOff(context.profile),
      cut: cutOffOf(context),
    },
    priority: 'hazard',
  })),
};
