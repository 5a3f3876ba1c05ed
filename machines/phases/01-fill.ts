import type { StepId } from '../../prompts/types.ts';
import type { Issue } from '../../src/engineering/result.ts';
import type { Profile } from '../../src/profile/schema.ts';
import type { Context } from '../context.ts';
import { coolantFill, freezeLimit } from '../limits/coolant.ts';
import { coolEnough } from '../limits/engine.ts';
import { biodieselLimit, fuelAdvice } from '../limits/fuel.ts';
import { gradesForNight, oilQuantity } from '../limits/oil.ts';
import { latest, withinRange } from '../limits/readings.ts';
import { isDone } from '../progress.ts';
import { confirm, hold, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import type { PromptValue, PromptValues, Quantity } from '../vocabulary.ts';

const litres = (si: number): PromptValue => ({ unit: 'litre', si });

const coldest = (context: Context): PromptValue => ({
  brief: 'coldestNight',
  si: latest(context, 'coldestNight') ?? 0,
});

/** Nothing serves, in the words of the trade; what else is wrong with a figure, as the calculation names it. */
const noneOf = (line: 'noMix' | 'noGrade' | 'noFuel', issue: Issue): PromptValue =>
  issue.code === 'noSolution' ? { line, values: {} } : { issue };

function coolantMix(context: Context): PromptValues {
  const fill = coolantFill(context);
  const glycol = { glycol: context.profile.coolant.kind };
  return fill.ok
    ? {
        glycol,
        concentrate: litres(fill.value.concentrateLitres),
        water: litres(fill.value.waterLitres),
        freeze: { unit: 'degC', si: fill.value.freezeC },
      }
    : { glycol, concentrate: noneOf('noMix', fill.issue), water: '', freeze: '' };
}

function oilGrades(context: Context): PromptValues {
  const grades = gradesForNight(context);
  return {
    coldest: coldest(context),
    grades: grades.ok
      ? { list: grades.value.map(oilGrade => ({ oilGrade })) }
      : noneOf('noGrade', grades.issue),
  };
}

function fuelToAdd(context: Context): PromptValues {
  const advice = fuelAdvice(context);
  const read = {
    coldest: coldest(context),
    tank: readOff(context, 'fuelInTank'),
    share: readOff(context, 'biodieselShare'),
  };
  if (!advice.ok) return { ...read, advice: noneOf('noFuel', advice.issue) };
  const { practice, risk, no1Litres, no2Litres } = advice.value;
  return {
    ...read,
    advice: {
      line: 'fuelToAdd',
      values: {
        practice: { fuel: practice },
        risk: { gelling: risk },
        no1: { brief: 'fuelInTank', si: no1Litres },
        no2: { brief: 'fuelInTank', si: no2Litres },
      },
    },
  };
}

const readOff = (context: Context, quantity: Quantity): PromptValue => ({
  quantity,
  si: latest(context, quantity) ?? Number.NaN,
});

const mixing = { group: 'coolantIn', ok: 'mixedAndFull' } as const;
const bottles = { group: 'bottles', ok: 'bottlesGood' } as const;
const fuelIn = { group: 'fuelAndFilters', ok: 'fuelAndFiltersRight' } as const;
const oilIn = { group: 'gradeAndFilter', ok: 'gradeAndFilterRight' } as const;

const canFill = (context: Context) => coolantFill(context).ok;

/**
 * Once it has run, a cap is opened, be it for a drop to measure, and coolant filled in, only when it is cool: cold coolant
 * cracks a hot block. Common practice, no published source.
 */
const isTouchedHot = (context: Context) =>
  hasFired(context) && COOLANT_TOUCHED.some(id => !isDone(context, id));
/** A stop takes it off what is done, and nobody goes back behind it. */
const hasFired = ({ done, again }: Context) => [...done, ...again].includes('firstFire.crank');
const COOLANT_TOUCHED: readonly StepId[] = [
  'fill.coolantMix',
  'fill.coolantFilled',
  'fill.coolantFreezePoint',
];

/** Coolant, oil, fuel, filters and steering fluid, for this engine and this cold. */
export const fillSteps = ({
  coolant,
  jacketHeater,
  oil,
  fuel,
  steering,
  shutdown,
}: Profile): readonly Step[] => [
  // Dry, or with air around it, it burns out; common practice, no published source.
  ...(jacketHeater
    ? [
        confirm('fill.jacketHeater', 'jacketHeaterOff', {
          gate: 'coolantReady',
          values: () => ({ at: jacketHeater.at }),
        }),
      ]
    : []),
  reading('fill.coolantCool', 'coolantTemperature', coolEnough, {
    byTime: true,
    gate: 'coolantReady',
    when: context => isTouchedHot(context) || isDone(context, 'fill.coolantCool'),
    values: () => ({
      unit: { unitOf: 'coolantTemperature' },
      limit: { brief: 'coolantTemperature', si: shutdown.safeToOpenC },
    }),
  }),
  confirm('fill.coolantMix', 'mixReady', {
    gate: 'coolantReady',
    values: coolantMix,
    possible: canFill,
    together: mixing,
  }),
  confirm('fill.coolantFilled', 'coolantFull', { gate: 'coolantReady', together: mixing }),
  hold('fill.coolantBleed', () => coolant.bleedHoldS),
  // Their bottles stand side by side, here as in the cold recheck.
  confirm('fill.coolantBled', 'noMoreAir', { gate: 'coolantReady', together: bottles }),
  ...(steering ? [confirm('fill.steeringFull', 'steeringFull', { together: bottles })] : []),
  reading('fill.coolantFreezePoint', 'coolantFreezePoint', freezeLimit),

  confirm('fill.oilGrade', 'gradeRight', {
    gate: 'oilReady',
    values: oilGrades,
    possible: context => gradesForNight(context).ok,
    together: oilIn,
  }),
  confirm(oil.filter === 'preFilled' ? 'fill.oilFilterPreFilled' : 'fill.oilFilterDry', 'filterFitted', {
    gate: 'oilReady',
    together: oilIn,
  }),
  // What opens the gate is the dipstick behind it.
  reading('fill.oilQuantity', 'oilQuantity', oilQuantity, {
    values: () => ({ capacity: litres(oil.capacityL), unit: { unitOf: 'oilQuantity' } }),
  }),
  confirm('fill.oilLevel', 'levelGood', { gate: 'oilReady', dipstick: true }),

  reading('fill.fuelInTank', 'fuelInTank', withinRange('fuelInTank', { min: 0, max: fuel.tankL }), {
    readBackIn: 'fill.fuelGrade',
  }),
  reading('fill.biodieselShare', 'biodieselShare', biodieselLimit, { readBackIn: 'fill.fuelGrade' }),
  confirm('fill.fuelGrade', 'fuelRight', {
    gate: 'fuelReady',
    readsBack: ['fill.fuelInTank', 'fill.biodieselShare'],
    values: fuelToAdd,
    possible: context => fuelAdvice(context).ok,
    together: fuelIn,
  }),
  ...fuel.filters.map(({ id, fit }) => {
    const place = id === 'first' ? 'firstFilter' : 'secondFilter';
    return confirm(fit === 'preFilled' ? `fill.${place}PreFilled` : `fill.${place}Dry`, 'filterFitted', {
      gate: 'fuelReady',
      together: fuelIn,
    });
  }),
];
