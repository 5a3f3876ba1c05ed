import { fill } from '../../session/wording.ts';
import type { Manner } from '../manner.ts';
import type { Reading, ReportModel } from '../model.ts';
import type { Block } from './blocks.ts';

/** Rules are long and few: a table names them by number, and a list tells them. */
export interface RuleBook {
  /** "[3]", or an empty string for a reading without a rule. */
  mark(reading: Reading): string;
  readonly rules: readonly { readonly id: string; readonly source: string }[];
}

export function ruleBook({ readings }: ReportModel): RuleBook {
  const rules = new Map<string, { id: string; source: string; number: number }>();
  for (const { verdict } of readings) {
    if (verdict?.rule === undefined) continue;
    const key = `${verdict.rule}\n${verdict.source ?? ''}`;
    if (!rules.has(key))
      rules.set(key, { id: verdict.rule, source: verdict.source ?? '', number: rules.size + 1 });
  }
  return {
    rules: [...rules.values()],
    mark: ({ verdict }) => {
      const found = rules.get(`${verdict?.rule ?? ''}\n${verdict?.source ?? ''}`);
      return found ? `[${found.number}]` : '';
    },
  };
}

export function rulesSection({ rules }: RuleBook, { words, name }: Manner): Block[] {
  if (rules.length === 0) return [];
  return [
    { type: 'section', title: words.rules.title },
    {
      type: 'list',
      items: rules.map(({ id, source }, index) => ({
        text: fill(words.rules.rule, {
          n: String(index + 1),
          sentence: name.rule(id),
          source: name.source(source),
        }),
      })),
    },
  ];
}
