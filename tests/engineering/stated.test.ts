import { describe, expect, test } from 'vitest';
import { valueFrom } from './properties.ts';
import { electrics } from './stated/electrics.ts';
import { fluids } from './stated/fluids.ts';
import { running } from './stated/running.ts';
import type { Statement } from './stated/statement.ts';

const STATEMENTS = [...fluids, ...electrics, ...running];

/** Small against any reading, large against what arithmetic loses. */
const justBeyond = (limit: number): number => Math.max(1, Math.abs(limit)) * 1e-9;

const inputs = STATEMENTS.flatMap(statement =>
  Object.entries(statement.ranges).map(([input, [min, max, unit]]) => ({
    ...statement,
    input,
    min,
    max,
    allowed: `${min} to ${max} ${unit}`.trimEnd(),
  })),
);

const issueOf = (statement: Statement, changed: Readonly<Record<string, number | undefined>>) => {
  const result = statement.compute({ ...statement.sound, ...changed });
  return result.ok ? undefined : result.issue;
};

function unitsIn(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, each]: [string, unknown]) =>
    name === 'unit' && typeof each === 'string' ? [each] : name === 'rule' ? [] : unitsIn(each),
  );
}

describe('each calculation keeps to what it states', () => {
  test.each(inputs)('$name: $input goes from $allowed', ({ input, min, max, allowed, ...statement }) => {
    for (const limit of [min, max]) {
      const outside = limit === min ? min - justBeyond(min) : max + justBeyond(max);
      expect(issueOf(statement, { [input]: outside })).toEqual({
        code: 'outOfRange',
        input,
        given: outside,
        allowed,
      });
      // On the limit itself something else may be wrong with it, but not its range.
      expect(issueOf(statement, { [input]: limit })).not.toMatchObject({ input, allowed });
    }
    expect(issueOf(statement, { [input]: undefined })).toEqual({ code: 'missing', input, allowed });
    expect(issueOf(statement, { [input]: Number.NaN })).toMatchObject({ code: 'notANumber', input, allowed });
  });

  test.each(STATEMENTS)('$name: names its rule, where that is from, and where it holds', statement => {
    const result = statement.compute(statement.sound);
    const value = valueFrom(result);
    if (!result.ok) return;
    expect(result.rule.id).toBe(statement.ruleId);
    for (const words of statement.source) expect(result.rule.source).toMatch(words);
    for (const words of statement.validity) expect(result.rule.validity).toMatch(words);
    expect(unitsIn(value)).toEqual(statement.verdictUnits ?? []);
  });
});
