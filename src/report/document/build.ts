import type { UnitSystem } from '../../session/units.ts';
import { fill, unparted } from '../../session/wording.ts';
import { dateTime } from '../format.ts';
import { mannerOf } from '../manner.ts';
import type { ReportModel } from '../model.ts';
import type { Block, ReportDocument } from './blocks.ts';
import { clip } from './clip.ts';
import { earSection } from './ear.ts';
import { footBlocks } from './foot.ts';
import { gatesSection } from './gates.ts';
import { figuresAtAGlance, jobBlocks, outcomeOf, trustBlocks } from './head.ts';
import { openSection } from './open-items.ts';
import { originsSection } from './origins.ts';
import { plotsSection, timeLineSection } from './plots.ts';
import { ruleBook, rulesSection } from './rules.ts';
import {
  besideSection,
  cautionsSection,
  computedSection,
  doubtsSection,
  faultsSection,
  holdsSection,
  misheardSection,
  skipsSection,
  stopsSection,
  toolSection,
} from './stories.ts';
import { withTexts } from './texts.ts';
import { voicesSection } from './voices.ts';

/** Text as it may be shown; a line's end parts no mark from its word and no degree from its figure. */
const set = (text: string): string => unparted(clip(text)).replace(/(?<=\d) (?=[°%])/g, '\u00a0');

/** Puts a report into the words of its session and in order: what matters most comes first. */
export function buildDocument(model: ReportModel, units: UnitSystem): ReportDocument {
  const manner = mannerOf(model.language, units);
  const { words } = manner;
  const rules = ruleBook(model);
  const outcome = outcomeOf(model, manner);
  const blocks: Block[] = [
    ...trustBlocks(model.trust, manner),
    {
      type: 'title',
      text: words.title,
      note: model.startedAt === null ? '' : dateTime(model.startedAt, manner),
    },
    { type: 'lead', ...outcome },
    ...(model.rehearsal ? [{ type: 'text', tone: 'warn', text: words.rehearsal } as const] : []),
    ...(model.profile?.invented
      ? [
          {
            type: 'text',
            tone: 'warn',
            text: words.invented,
          } as const,
        ]
      : []),
    ...jobBlocks(model, manner),
    figuresAtAGlance(model, manner),
    ...originsSection(model, manner),
    ...timeLineSection(model, manner),
    ...openSection(model, manner),
    ...stopsSection(model, manner),
    ...doubtsSection(model, manner),
    ...besideSection(model, manner),
    ...gatesSection(model, rules, manner),
    ...plotsSection(model, manner),
    ...faultsSection(model, manner),
    ...skipsSection(model, manner),
    ...misheardSection(model, manner),
    ...earSection(model, manner),
    ...voicesSection(model, manner),
    ...holdsSection(model, manner),
    ...computedSection(model, manner),
    ...cautionsSection(model, manner),
    ...toolSection(model, manner),
    ...rulesSection(rules, manner),
    ...footBlocks(model, manner),
  ];
  const [first] = blocks;
  const warned = first?.type === 'banner' && first.tone === 'bad';
  return {
    language: model.language,
    title: set(fill(words.fileTitle, { vehicle: model.job?.vehicle ?? words.unknownVehicle })),
    ...(warned ? { warning: set(first.text) } : {}),
    footer: model.trust.lastHash === undefined ? '' : fill(words.recordFoot, { hash: model.trust.lastHash }),
    paper: units === 'us' ? 'LETTER' : 'A4',
    blocks: blocks.map(block => withTexts(block, set)),
  };
}
