import { english } from '../../../prompts/en/index.ts';

/** The phases in their order, by id. */
export const phaseIds: readonly string[] = Object.keys(english.phases);

/** The phase of a step or state such as `fill.oilLevel.asking`; null for states outside every phase. */
export function phaseOfStep(step: string): string | null {
  const [phase = ''] = step.split('.', 1);
  return phaseIds.includes(phase) ? phase : null;
}
