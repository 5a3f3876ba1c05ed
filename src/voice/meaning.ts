import { voiceLanguage } from './languages/index.ts';
import type { VoiceLanguage } from './languages/language.ts';
import { comparable } from './languages/spelling.ts';
import { numberReader } from './number-words/slot.ts';
import type { Grammar, Heard, NumberSlot } from './ports.ts';
import { containsWording } from './wording.ts';

/** What an exact wording of a grammar stands for. */
export type Meaning =
  /** `calls`: a call for help, by its id. */
  | { readonly kind: 'stop'; readonly calls?: string }
  | { readonly kind: 'reply'; readonly id: string }
  | { readonly kind: 'number'; readonly id: string; readonly value: number };

/** Whether what was heard is what was meant, to the very value. */
export function isMeant(meant: Meaning, heard: Meaning | Heard): boolean {
  if (meant.kind !== heard.kind) return false;
  if (meant.kind === 'stop') return true;
  if (meant.kind === 'reply') return heard.kind === 'reply' && heard.id === meant.id;
  return heard.kind === 'number' && heard.id === meant.id && heard.value === meant.value;
}

/** Finds what a text means in one grammar; every recognizer decides by this and nothing else. */
export interface Matcher {
  /**
   * The meaning of the whole text. A stop wording anywhere in it means stop, whatever else was said; a call for help is one
   * by itself, where it answers nothing that is asked.
   * A text that means nothing, or could mean two different things, has no meaning.
   */
  meaningOf(text: string): Meaning | undefined;
}

function numberMeanings(slot: NumberSlot, language: VoiceLanguage): (text: string) => readonly number[] {
  const reader = numberReader(slot);
  const around = (wordings: readonly string[]) =>
    wordings.map(wording => comparable(wording, language)).filter(wording => wording !== '');
  const withLead = around(slot.leads).map(lead => `${lead} `);
  const leads = slot.leadNeeded ? withLead : ['', ...withLead];
  const units = ['', ...around(slot.units).map(unit => ` ${unit}`)];
  return text => {
    const values = leads
      .filter(lead => text.startsWith(lead))
      .flatMap(lead =>
        units
          .filter(unit => text.endsWith(unit) && text.length > lead.length + unit.length)
          .flatMap(unit => reader.read(text.slice(lead.length, text.length - unit.length))),
      );
    return [...new Set(values)];
  };
}

/**
 * Prepares a grammar for matching.
 * @throws VoiceError `grammarUnusable` when its number slot cannot be listened for.
 */
export function createMatcher(grammar: Grammar): Matcher {
  const language = voiceLanguage(grammar.language);
  const compared = (wording: string) => comparable(wording, language);
  const stops = grammar.stop.map(compared);
  const idsByWording = new Map<string, Set<string>>();
  for (const { id, wordings } of grammar.replies) {
    for (const wording of wordings.map(compared)) {
      idsByWording.set(wording, (idsByWording.get(wording) ?? new Set()).add(id));
    }
  }
  const calls = new Map(
    (grammar.calls ?? []).flatMap(({ id, wordings }) =>
      wordings.map(wording => [compared(wording), id] as const),
    ),
  );
  const slot = grammar.number;
  const valuesIn = slot === undefined ? () => [] : numberMeanings(slot, language);

  return {
    meaningOf(raw) {
      const text = compared(raw);
      if (stops.some(stop => containsWording(text, stop))) return { kind: 'stop' };
      if (text === '') return undefined;
      const meanings: Meaning[] = [...(idsByWording.get(text) ?? [])].map(id => ({ kind: 'reply', id }));
      if (slot !== undefined) {
        meanings.push(...valuesIn(text).map((value): Meaning => ({ kind: 'number', id: slot.id, value })));
      }
      const called = calls.get(text);
      if (called !== undefined && meanings.length === 0) return { kind: 'stop', calls: called };
      return meanings.length === 1 ? meanings[0] : undefined;
    },
  };
}

const matchers = new WeakMap<Grammar, Matcher>();

/** The matcher of a grammar, made once for each grammar object. @throws VoiceError as `createMatcher`. */
export function matcherOf(grammar: Grammar): Matcher {
  const matcher = matchers.get(grammar) ?? createMatcher(grammar);
  matchers.set(grammar, matcher);
  return matcher;
}
