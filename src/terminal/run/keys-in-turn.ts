import type { Heard } from '../../voice/ports.ts';
import type { TypedRecognizer } from '../../voice/recognizers/typed.ts';

export interface KeysInTurn extends TypedRecognizer {
  /** Whether what is asked now may be answered already: its sentence is on the disk, and said. */
  isAsked(): boolean;
}

/**
 * Keys that answer only what has been asked: a line that comes while the answer before it is still being carried out is
 * not understood, as it may be meant for that one. A stop is taken at any time.
 * @param keyNow what the session awaits at this moment (`key` of its grammar)
 */
export function keysInTurn(keys: TypedRecognizer, keyNow: () => string): KeysInTurn {
  let listensFor: string | null = null;
  const isAsked = () => listensFor === keyNow();
  const inTurn = (heard: Heard): Heard =>
    heard.kind === 'stop' || isAsked()
      ? heard
      : { kind: 'unclear', text: heard.text, reason: 'outOfGrammar' };
  return {
    ...keys,
    isAsked,
    listen(grammar) {
      listensFor = grammar.key;
      keys.listen(grammar);
    },
    onHeard(handler) {
      keys.onHeard(heard => handler(inTurn(heard)));
    },
  };
}
