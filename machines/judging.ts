import { describeIssue, type Verdict } from '../src/engineering/result.ts';
import type { Written } from '../src/record/vocabulary/kinds.ts';
import { isNearItsLimit } from './assurance.ts';
import type { Judge, Judgement } from './steps.ts';
import { atMs, type Line, type Look, note, update } from './toolkit.ts';
import { type PromptValue, type PromptValues, type Quantity, quantityUnits } from './vocabulary.ts';

/** The value that waits for, or has just had, its read-back. */
export const pendingValue = ({ context }: Look) =>
  context.pending?.kind === 'value' ? context.pending : null;

/** What the rule says of the value at hand; null when there is none. */
export function judgementOf(judge: Judge, look: Look): Judgement | null {
  const value = pendingValue(look);
  return value ? judge(look.context, value.si, atMs(look.event)) : null;
}

/** True only for a value that is there, that the rule can judge, and that is inside its limits. */
export const meets =
  (judge: Judge) =>
  (look: Look): boolean => {
    const judgement = judgementOf(judge, look);
    return judgement?.ok === true && judgement.value.met;
  };

/** Judged, and outside: what a rule has no answer to is neither inside nor outside. */
export const isOutside = (judgement: Judgement): boolean =>
  judgement.ok ? !judgement.value.met : 'verdict' in judgement;

/** True only for a value that is there, that the rule can judge, and that is outside its limits. */
export const breaks =
  (judge: Judge) =>
  (look: Look): boolean => {
    const judgement = judgementOf(judge, look);
    return judgement !== null && isOutside(judgement);
  };

/** Keeps the value as a reading of this session. */
export const keepReading = update(look => {
  const value = pendingValue(look);
  return value
    ? {
        readings: [
          ...look.context.readings,
          {
            quantity: value.quantity,
            si: value.si,
            atMs: atMs(look.event),
            step: look.context.step,
            ...(value.byBus ? { byBus: value.byBus } : {}),
          },
        ],
      }
    : {};
});

/** What a verdict and a time limit have in common on the record. */
type Judged = Omit<Written<'inTime'>, 'step' | 'seconds' | 'unit'>;

const verdictData = (verdict: Verdict): Judged => ({
  met: verdict.met,
  ...(verdict.min === undefined ? {} : { min: verdict.min }),
  ...(verdict.max === undefined ? {} : { max: verdict.max }),
  margin: verdict.margin,
  rule: verdict.rule.id,
  source: verdict.rule.source,
});

/** What was held against the limits, where that is not the value itself: a peak that follows, a scatter, a rank. */
const heldAgainst = (verdict: Verdict, read: Read | undefined): Pick<Judged, 'of' | 'ofUnit'> =>
  read === undefined || (verdict.value === read.si && verdict.unit === read.unit)
    ? {}
    : { of: verdict.value, ofUnit: verdict.unit };

/** What was read, in the unit of its quantity. */
interface Read {
  readonly si: number;
  readonly unit: string;
}

/** A judgement as the record keeps it. */
export function judgementData(judgement: Judgement | null, read?: Read): Judged {
  if (judgement === null) return { met: false };
  if (judgement.ok) return { ...verdictData(judgement.value), ...heldAgainst(judgement.value, read) };
  return 'verdict' in judgement
    ? {
        ...verdictData(judgement.verdict),
        ...heldAgainst(judgement.verdict, read),
        met: false,
        why: judgement.line,
      }
    : { met: false, why: describeIssue(judgement.issue) };
}

/** The verdict for the record: value, limits, margin, rule and source. */
export const noteVerdict = (judge: Judge) =>
  note(look => {
    const value = pendingValue(look);
    return {
      kind: 'verdict',
      data: {
        step: look.context.step,
        quantity: value?.quantity ?? null,
        value: value?.si ?? null,
        unit: value ? quantityUnits[value.quantity] : null,
        ...(value?.byBus ? { via: 'bus' } : {}),
        ...(value?.busSi === undefined ? {} : { bus: value.busSi }),
        ...judgementData(
          judgementOf(judge, look),
          value ? { si: value.si, unit: quantityUnits[value.quantity] } : undefined,
        ),
      },
    };
  });

/** The limits of a judgement as a blank's value, of this quantity where they are; empty where the rule has no answer. */
export function limitsOf(judgement: Judgement | null, of?: Quantity): PromptValue {
  const verdict = judgement?.ok
    ? judgement.value
    : judgement && 'verdict' in judgement
      ? judgement.verdict
      : null;
  if (!verdict) return '';
  const { unit, min, max } = verdict;
  return {
    limits: {
      unit,
      ...(of !== undefined && unit === quantityUnits[of] ? { of } : {}),
      ...(min === undefined ? {} : { min }),
      ...(max === undefined ? {} : { max }),
    },
  };
}

/** A judgement in one short sentence. */
export function judgementLine(judgement: Judgement, quantity: Quantity, si: number): ReturnType<Line> {
  const named: PromptValues = { name: { quantityName: quantity }, spoken: { brief: quantity, si } };
  if (judgement.ok) {
    const { met } = judgement.value;
    const line = !met ? 'outside' : isNearItsLimit(judgement.value) ? 'justInside' : 'inside';
    return { line, values: { ...named, limits: limitsOf(judgement, quantity) } };
  }
  return 'line' in judgement
    ? { line: judgement.line, values: { ...named, ...judgement.values } }
    : { line: 'outsideUnjudged', values: { ...named, why: { issue: judgement.issue } } };
}

/** The verdict on a value of a running engine: one that cannot be judged does not count, and what is left to do is told. */
export const sayVerdictRunning =
  (judge: Judge): Line =>
  look => {
    const said = sayVerdict(judge)(look);
    return said.line === 'outsideUnjudged' ? { ...said, line: 'unjudgedRunning' } : said;
  };

/** The verdict on the value at hand, in one short sentence. */
export const sayVerdict =
  (judge: Judge): Line =>
  look => {
    const value = pendingValue(look);
    const judgement = judgementOf(judge, look);
    return value && judgement
      ? judgementLine(judgement, value.quantity, value.si)
      : { line: 'unclear', values: {} };
  };
