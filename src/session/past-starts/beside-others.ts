import type { Said } from '../../../machines/context.ts';
import type { PromptValue } from '../../../machines/vocabulary.ts';
import type { LineId } from '../../../prompts/types.ts';
import { type Standing, standingAmong } from '../../engineering/normal-range.ts';
import type { Written } from '../../record/vocabulary/index.ts';
import { comparedFigures, type Figure, type FigureName } from './figures.ts';

/** What the shop's earlier starts of the same engine measured, by figure, in its unit. */
export type PastStarts = Readonly<Partial<Record<FigureName, readonly number[]>>>;

/** Where a figure of this start stands among the earlier ones; undefined where these are too few to say. */
export function besideOthers(
  { figure, value }: Figure,
  past: PastStarts,
): Written<'besideOthers'> | undefined {
  const { step, unit, resolution } = comparedFigures[figure];
  const standing = standingAmong(value, past[figure] ?? [], resolution);
  return standing.ok ? { step, figure, value, unit, ...standing.value } : undefined;
}

type Side = 'more' | 'less';

const lines: Readonly<Record<'s' | 'other', Readonly<Record<Side, LineId>>>> = {
  s: { more: 'slowerThanOthers', less: 'fasterThanOthers' },
  other: { more: 'higherThanOthers', less: 'lowerThanOthers' },
};

/** The line that says so; nothing where it stands within what is normal. */
export function unlikeOthers(
  figure: FigureName,
  value: number,
  { within, others, below, above, median, min, max }: Standing,
): Said[] {
  if (within) return [];
  const { step, unit } = comparedFigures[figure];
  const side: Side = value > median ? 'more' : 'less';
  const si: PromptValue = { unit, si: value };
  return [
    {
      line: lines[unit === 's' ? 's' : 'other'][side],
      step,
      values: {
        name: { step },
        value: figure === 'warm-up-pace' ? { line: 'forTenDegrees', values: { time: si } } : si,
        count: side === 'more' ? below : above,
        all: others,
        limits: { limits: { unit, min: Math.max(0, min), max } },
      },
      priority: 'notice',
    },
  ];
}
