import type { Form, Token } from './number-words/vocabulary.ts';

/** Phrases with their common beginnings shared. */
export interface PrefixTree {
  readonly next: Map<string, { readonly token: Token; readonly tree: PrefixTree }>;
  /** Whether a phrase may end here. */
  ends: boolean;
}

/** Builds the tree of the given forms; equal beginnings (token by token) are kept once. */
export function prefixTreeOf(forms: readonly Form[]): PrefixTree {
  const root: PrefixTree = { next: new Map(), ends: false };
  for (const form of forms) {
    let tree = root;
    for (const token of form) {
      const key = token.join('|');
      const known = tree.next.get(key) ?? { token, tree: { next: new Map(), ends: false } };
      tree.next.set(key, known);
      tree = known.tree;
    }
    tree.ends = true;
  }
  return root;
}
