import { listenedRange, typedRange } from '../../machines/limits/gauges.ts';
import { controlsOf, isOver, type Moment, offerOf, stateName } from '../../machines/moment.ts';
import type { Offer } from '../../machines/toolkit.ts';
import { type Quantity, quantityUnits, type Via } from '../../machines/vocabulary.ts';
import type { ControlId, Language, ReplyId } from '../../prompts/types.ts';
import type { Grammar, NumberSlot } from '../voice/ports.ts';
import { callsFor } from './calls-for-help.ts';
import { typedUnits } from './typed-units.ts';
import { fromUser, shownUnit, toUser, type UnitSystem, userUnit } from './units.ts';

/**
 * Steps, in the user's unit, of what need not be said more finely. Every number less that may be said is heard
 * sooner and taken less easily for another.
 */
const coarse: Partial<Record<Quantity, number>> = { altitude: 100, engineSpeed: 10, fuelInTank: 1 };

/** Of a smaller tank a whole litre or gallon, 2 to 8 % of it, is too much to round. */
const LARGE_TANK_L = 50;

const stepOf = (quantity: Quantity, decimals: number, { profile }: Moment['context']): number =>
  quantity === 'fuelInTank' && profile.fuel.tankL < LARGE_TANK_L
    ? 10 ** -decimals
    : (coarse[quantity] ?? 10 ** -decimals);

/** Misunderstood twice: from then on digit by digit only. */
const DIGITS_AFTER = 2;

function numberSlot(
  quantity: Quantity,
  moment: Moment,
  language: Language,
  units: UnitSystem,
  via: Via,
): NumberSlot {
  const unit = userUnit(units, shownUnit(quantity));
  const step = stepOf(quantity, unit.decimals, moment.context);
  const toSlot = (si: number) => toUser(unit, si) / step;
  const within = ([min, max]: readonly [number, number]) => ({
    min: Number((Math.ceil(toSlot(min) - 1e-9) * step).toFixed(unit.decimals)),
    max: Number((Math.floor(toSlot(max) + 1e-9) * step).toFixed(unit.decimals)),
  });
  const listened = within(listenedRange(quantity, moment.context.profile));
  const names = language.quantities[quantity];
  return {
    id: quantity,
    leads: names.leads,
    units: language.units[unit.id].said,
    writtenUnits: [language.units[unit.id].short],
    ...(via === 'voice' ? {} : typedUnits(unit, quantityUnits[quantity], language)),
    ...(via === 'voice'
      ? listened
      : { ...within(typedRange(quantity, moment.context.profile)), inWords: listened }),
    step,
    language: language.code,
    digitsOnly: quantity === 'suspectParameter' || moment.context.misheard >= DIGITS_AFTER,
  };
}

/** A number as it was said, in SI. */
export const slotValueToSi = (quantity: Quantity, value: number, units: UnitSystem): number =>
  fromUser(userUnit(units, shownUnit(quantity)), value);

export const isControl = (language: Language, id: string): id is keyof Language['controls'] =>
  id in language.controls;

export const isReplyId = (language: Language, id: string): id is keyof Language['replies'] =>
  id in language.replies;

/** Misunderstood three times: by voice only the second person is believed, saying the word "second" first. */
const SECOND_AFTER = 3;

/** Never for the supervisor: what is theirs they answer by keys and touch then. */
export const secondOnly = (moment: Moment) =>
  moment.context.misheard >= SECOND_AFTER && offerOf(moment).by !== 'supervisor';

/** The wordings of a reply; "yes" and "done" stand for the one that is asked for, by voice where nothing hangs on it. */
function wordingsOf(
  id: ReplyId,
  { affirmed, replies }: Offer,
  language: Language,
  via: Via,
): readonly string[] {
  const own: readonly string[] = language.replies[id];
  if (affirmed?.reply !== id || (via === 'voice' && !affirmed.always)) return own;
  const taken = new Set(replies.flatMap(reply => language.replies[reply] as readonly string[]));
  return [...own, ...language.affirmatives.filter(wording => !taken.has(wording))];
}

/** The wordings of a control word, and at the keys what would be misheard. */
const controlWordings = (id: ControlId, { controls, typedControls }: Language, via: Via) => [
  ...controls[id],
  ...(via === 'voice' ? [] : ((typedControls as Partial<Record<ControlId, readonly string[]>>)[id] ?? [])),
];

/** Everything that may be said now, from the state of the machine. Typed replies need no word before them. */
export function grammarOf(moment: Moment, language: Language, units: UnitSystem, via: Via): Grammar {
  const offer = offerOf(moment);
  const bySecond = via === 'voice' && secondOnly(moment);
  const worded = (wordings: readonly string[]) =>
    bySecond ? wordings.map(wording => `${language.words.second} ${wording}`) : wordings;
  const quantity = offer.quantity ?? offer.corrects;
  const slot = quantity ? numberSlot(quantity, moment, language, units, via) : null;
  const replies = [
    ...offer.replies.map(id => ({ id, wordings: worded(wordingsOf(id, offer, language, via)) })),
    ...controlsOf(moment).map(id => ({ id, wordings: controlWordings(id, language, via) })),
  ];
  return {
    key: stateName(moment),
    language: language.code,
    stop: language.stopWordings,
    replies,
    ...(isOver(moment) ? {} : { calls: callsFor(replies, language) }),
    ...(offer.replies.includes('yes') ? { agreement: 'yes' } : {}),
    ...(slot
      ? {
          number: bySecond
            ? { ...slot, leads: [language.words.second, ...worded(slot.leads)], leadNeeded: true }
            : slot,
        }
      : {}),
  };
}
