import { allOf } from '../count.ts';
import type { Results } from '../results.ts';
import { countOf, levelText, shares, table, takenHead } from './cells.ts';

export function peersText({ peers }: Results): string[] {
  if (!peers) return [];
  const { rows, farthest, size } = peers;
  const bounds = Object.entries(farthest).map(([name, each]) => `${name} ${each}`);
  return [
    `## Beside other recognizers (size: ${size})`,
    `On the same sound in the same run. Our own ear has to find each utterance in its noise; the others are given it cut out. Native PocketSphinx (Debian's) is given the grammar. What recognizers of free text write is taken for the phrase of the grammar that is nearest by its phones, if it is near enough: how near, in phones wrong for each phone written, was chosen on people and voices of the development set at 10 dB, by most right beyond wrong (${bounds.join(', ')}). Clips are spread evenly over those of the first table; so few are preliminary.`,
    table(
      ['what', 'speech above noise', 'system', ...takenHead, 'utterances by speakers'],
      rows.map(({ of, level, system, taken, speakers }) => [
        of,
        levelText(level),
        system,
        ...shares(taken),
        countOf(allOf(taken), speakers),
      ]),
    ),
  ];
}
