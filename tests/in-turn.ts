import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** They take minutes of a processor: begun last, one would be waited for with the other processor idle. */
const LONG = /\/(?:by-voice|by-recording|honest[\w-]*|french|viewer|faces|paths|session)\.test\.tsx?$/;

/** Spreads `some` evenly among `others`, both in their order. */
export function spread<T>(others: readonly T[], some: readonly T[]): T[] {
  const whole = others.length + some.length;
  const turnOf = (nth: number, of: number): number => ((nth + 0.5) * whole) / of;
  return [
    ...others.map((each, nth) => ({ each, turn: turnOf(nth, others.length) })),
    ...some.map((each, nth) => ({ each, turn: turnOf(nth, some.length) })),
  ]
    .sort((a, b) => a.turn - b.turn)
    .map(({ each }) => each);
}

/**
 * Long tests first; those in a browser, which mostly wait, spread among those that mostly compute, so that hardly ever
 * two browsers share two processors; what listens in real time last and alone (by its `groupOrder`).
 */
export class InTurn extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const of = (name: string) => sorted.filter(({ project }) => project.name === name);
    const anyTime = of('any time');
    const isLong = ({ moduleId }: TestSpecification): boolean => LONG.test(moduleId);
    const together = spread(
      [...anyTime.filter(isLong), ...anyTime.filter(each => !isLong(each))],
      of('in a browser'),
    );
    return [...together, ...sorted.filter(each => !together.includes(each))];
  }
}
