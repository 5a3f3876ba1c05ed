import { VoiceError } from '../../../src/voice/errors.ts';
import { formsOf } from '../../../src/voice/number-words/slot.ts';
import { type Form, type Token, word } from '../../../src/voice/number-words/vocabulary.ts';
import type { Grammar, NumberSlot } from '../../../src/voice/ports.ts';
import { type PrefixTree, prefixTreeOf } from '../../../src/voice/prefix-tree.ts';
import { normalizeWording, spokenWordings } from '../../../src/voice/wording.ts';

const formOf = (wording: string): Form => wording.split(' ').map(word);

function wordingForms(grammar: Grammar, wordings: readonly string[]): readonly Form[] {
  return wordings.map(wording => {
    const normalized = normalizeWording(wording);
    if (normalized === '') {
      throw new VoiceError(
        'grammarUnusable',
        `Grammar "${grammar.key}" has a wording without words ("${wording}"); write it as it is spoken.`,
      );
    }
    return formOf(normalized);
  });
}

function tokenText(token: Token): string {
  const words = token.filter(w => w !== '');
  const choice = words.length === 1 ? words.join('') : `( ${words.join(' | ')} )`;
  return words.length === token.length ? choice : `[ ${choice} ]`;
}

/** Writes trees as expressions, and equal sub-trees once, as rules of their own. */
class RuleWriter {
  readonly rules: string[] = [];
  private readonly nameOf = new Map<string, string>();

  /** An expression for the tree; the empty string when nothing follows. */
  expression(tree: PrefixTree): string {
    if (tree.next.size === 0) return '';
    const branches = [...tree.next.values()].map(({ token, tree: rest }) =>
      `${tokenText(token)} ${this.reference(rest)}`.trim(),
    );
    return tree.ends ? `[ ${branches.join(' | ')} ]` : `( ${branches.join(' | ')} )`;
  }

  private reference(tree: PrefixTree): string {
    const text = this.expression(tree);
    if (tree.next.size < 2) return text;
    const known = this.nameOf.get(text);
    if (known !== undefined) return known;
    const name = `<t${this.rules.length}>`;
    this.nameOf.set(text, name);
    this.rules.push(`${name} = ${text};`);
    return name;
  }
}

const optional = (wordings: readonly string[]) =>
  wordings.length === 0 ? '' : `[ ${wordings.join(' | ')} ]`;

/** The number between its leads and units; the empty string when a lead is needed and none can be said. */
function numberExpression(slot: NumberSlot, writer: RuleWriter): string {
  const leads = spokenWordings(slot.leads);
  if (slot.leadNeeded && leads.length === 0) return '';
  const lead = slot.leadNeeded ? `( ${leads.join(' | ')} )` : optional(leads);
  const value = writer.expression(prefixTreeOf(formsOf(slot)));
  return `${lead} ${value} ${optional(spokenWordings(slot.units))}`.trim();
}

/**
 * The grammar as JSGF: replies, number and stop wordings.
 * @throws VoiceError `grammarUnusable` on a wording without words, an unusable number slot, or nothing to say.
 */
export function toJsgf(grammar: Grammar): string {
  const writer = new RuleWriter();
  const said = (wordings: readonly string[]) =>
    writer.expression(prefixTreeOf(wordingForms(grammar, wordings)));
  const choices = [
    said(grammar.replies.flatMap(reply => reply.wordings)),
    grammar.number === undefined ? '' : numberExpression(grammar.number, writer),
    said(grammar.stop),
  ].filter(choice => choice !== '');
  if (choices.length === 0) {
    throw new VoiceError(
      'grammarUnusable',
      `Grammar "${grammar.key}" has nothing that may be said; give it a reply, a number or a stop wording.`,
    );
  }
  const asked = `<asked> = ${choices.join(' | ')};`;
  return jsgf([...writer.rules, asked, 'public <now> = <asked>;']);
}

const jsgf = (rules: readonly string[]) => ['#JSGF V1.0 UTF-8;', 'grammar now;', ...rules, ''].join('\n');
