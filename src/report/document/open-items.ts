import { shownUnit } from '../../session/units.ts';
import { fill, showMeasure } from '../../session/wording.ts';
import type { Manner } from '../manner.ts';
import type { OpenItem, ReportModel } from '../model.ts';
import { own } from '../own.ts';
import type { Block, Cell } from './blocks.ts';

/** One open item in words. */
export const openText = (item: OpenItem, { words, name, language, units }: Manner): string => {
  const { open } = words;
  switch (item.kind) {
    case 'gate':
      return fill(open.gate, { gate: name.gate(item.gate) });
    case 'skip':
      return fill(open.skip, { step: name.step(item.step), reason: name.reply(item.reason) });
    case 'fault':
      return fill(open.fault, {
        spn: String(item.spn),
        fmi: String(item.fmi),
        reason: name.reply(item.accepted),
      });
    case 'left': {
      const { step, quantity, si, finding } = item;
      const value =
        quantity === undefined || si === undefined
          ? []
          : [`${name.quantity(quantity)} ${showMeasure(si, shownUnit(quantity), language, units)}`];
      const what = [...value, ...(finding === undefined ? [] : [name.reply(finding)])];
      return fill(what.length > 0 ? open.leftWith : open.left, {
        step: name.step(step),
        what: what.join(', '),
      });
    }
    case 'barred':
      return fill(open.barred, { why: own<string>(language.lines, item.line) ?? item.line });
    case 'reopened':
      return fill(open.reopened, { step: name.step(item.step) });
  }
};

/** A list of gates is one item when most of the work is still to come. */
const FEW_GATES = 4;

function openCells(openItems: readonly OpenItem[], manner: Manner): Cell[] {
  const { words, name } = manner;
  const gates = openItems.flatMap(item => (item.kind === 'gate' ? [name.gate(item.gate)] : []));
  const joined = gates.length > FEW_GATES;
  const rest = openItems.filter(({ kind }) => !joined || kind !== 'gate').map(item => openText(item, manner));
  const texts = joined
    ? [fill(words.open.gates, { n: String(gates.length), gates: gates.join(', ') }), ...rest]
    : rest;
  return texts.map(text => ({ text, tone: 'bad' }));
}

export function openSection({ openItems, retorque, trust }: ReportModel, manner: Manner): Block[] {
  const words = manner.words.open;
  const items = openCells(openItems, manner);
  const done = retorque.filter(item => item.done).length;
  return [
    { type: 'section', title: words.title },
    items.length === 0
      ? {
          type: 'text',
          text: trust.replayFault === undefined ? words.none : words.noneConfirmed,
          tone: 'muted',
        }
      : { type: 'list', boxes: true, items },
    ...(retorque.length === 0
      ? []
      : [
          {
            type: 'section',
            title: words.retorque,
            note: manner.counted(retorque.length, words.retorqueNote, { done: String(done) }),
          } as const,
          {
            type: 'list',
            boxes: true,
            items: retorque.map(item =>
              item.done
                ? { text: fill(words.torqued, { name: item.name }), ticked: true }
                : { text: fill(words.notTorqued, { name: item.name }), tone: 'bad' as const },
            ),
          } as const,
        ]),
  ];
}
