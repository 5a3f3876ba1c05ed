import type { UnitSystem } from '../../session/units.ts';
import { dateTime } from '../format.ts';
import type { ReportModel } from '../model.ts';
import type { Block, ReportDocument } from './blocks.ts';
import { clip, clipped } from './clip.ts';
import { footBlocks } from './foot.ts';
import { gatesSection } from './gates.ts';
import { figuresAtAGlance, jobBlocks, outcomeOf, trustBlocks } from './head.ts';
import { openSection } from './open-items.ts';
import { plotsSection, timeLineSection } from './plots.ts';
import { ruleBook, rulesSection } from './rules.ts';
import {
  cautionsSection,
  computedSection,
  faultsSection,
  holdsSection,
  misheardSection,
  skipsSection,
  stopsSection,
  toolSection,
} from './stories.ts';

/** Puts a report into words and in order: what matters most comes first. */
export function buildDocument(model: ReportModel, units: UnitSystem): ReportDocument {
  const rules = ruleBook(model);
  const outcome = outcomeOf(model);
  const blocks: Block[] = [
    ...trustBlocks(model.trust),
    {
      type: 'title',
      text: 'First start: report',
      note: model.startedAt === null ? '' : dateTime(model.startedAt),
    },
    { type: 'lead', ...outcome },
    ...(model.profile?.invented
      ? [
          {
            type: 'text',
            tone: 'warn',
            text: 'The engine of this report is invented, for practice.',
          } as const,
        ]
      : []),
    ...jobBlocks(model, dateTime),
    figuresAtAGlance(model),
    ...timeLineSection(model),
    ...openSection(model),
    ...gatesSection(model, units, rules),
    ...plotsSection(model, units),
    ...stopsSection(model),
    ...faultsSection(model),
    ...skipsSection(model),
    ...misheardSection(model),
    ...holdsSection(model),
    ...computedSection(model),
    ...cautionsSection(model),
    ...toolSection(model),
    ...rulesSection(rules),
    ...footBlocks(model),
  ];
  const [first] = blocks;
  const warned = first?.type === 'banner' && first.tone === 'bad';
  return {
    title: clip(`First start: ${model.job?.vehicle ?? 'unknown vehicle'}`),
    ...(warned ? { warning: clip(first.text) } : {}),
    footer: model.trust.lastHash === undefined ? '' : `Record ${model.trust.lastHash}`,
    paper: units === 'us' ? 'LETTER' : 'A4',
    blocks: blocks.map(clipped),
  };
}
