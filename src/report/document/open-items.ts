import type { OpenItem, ReportModel } from '../model.ts';
import { count, nameOf } from '../names.ts';
import type { Block, Cell } from './blocks.ts';

/** One open item in words. */
export const openText = (item: OpenItem): string => {
  switch (item.kind) {
    case 'gate':
      return `Gate not met: ${nameOf.gate(item.gate)}`;
    case 'skip':
      return `Skipped: ${nameOf.step(item.step)} (${nameOf.reply(item.reason)})`;
    case 'fault':
      return `Code accepted by the supervisor: SPN ${item.spn} FMI ${item.fmi} (${nameOf.reply(item.accepted)})`;
    case 'reopened':
      return `To be done again: ${nameOf.step(item.step)}`;
  }
};

/** A list of gates is one item when most of the work is still to come. */
const FEW_GATES = 4;

function openCells(openItems: readonly OpenItem[]): Cell[] {
  const gates = openItems.flatMap(item => (item.kind === 'gate' ? [nameOf.gate(item.gate)] : []));
  const joined = gates.length > FEW_GATES;
  const rest = openItems.filter(({ kind }) => !joined || kind !== 'gate').map(openText);
  const texts = joined ? [`${gates.length} gates not met: ${gates.join(', ')}`, ...rest] : rest;
  return texts.map(text => ({ text, tone: 'bad' }));
}

export function openSection({ openItems, retorque, trust }: ReportModel): Block[] {
  const items = openCells(openItems);
  const done = retorque.filter(item => item.done).length;
  return [
    { type: 'section', title: 'Open items' },
    items.length === 0
      ? {
          type: 'text',
          text:
            trust.replayFault === undefined
              ? 'Nothing is left open.'
              : 'The record names none; that could not be confirmed.',
          tone: 'muted',
        }
      : { type: 'list', boxes: true, items },
    ...(retorque.length === 0
      ? []
      : [
          {
            type: 'section',
            title: 'Retorque list',
            note: `${done} of ${count(retorque.length, 'item')} confirmed, cold.`,
          } as const,
          {
            type: 'list',
            boxes: true,
            items: retorque.map(item =>
              item.done
                ? { text: `${item.name}: torqued`, ticked: true }
                : { text: `${item.name}: OPEN`, tone: 'bad' as const },
            ),
          } as const,
        ]),
  ];
}
