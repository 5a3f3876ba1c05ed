import { type Node, type Nodes, remark } from './toolkit.ts';
import type { PromptValue } from './vocabulary.ts';

/** Named for the eye wherever somebody asks what may be said. */
export const emergencyWords = { words: { emergencyWords: 'shown' } } as const;

/** "Help" names what may be said here; where nothing in particular is awaited, the root names the rest. */
const helpOf = ({ meta }: Node): Node['on'] => {
  if (!meta) return {};
  const choices: PromptValue[] = [
    ...meta.replies.map(reply => ({ reply })),
    ...(meta.quantity ? [{ quantityName: meta.quantity }] : []),
  ];
  return choices.length === 0
    ? {}
    : {
        help: {
          actions: remark(() => ({
            line: 'help',
            values: { choices: { list: choices }, ...emergencyWords },
          })),
        },
      };
};

/** Gives each state of a step, or of the stop, its own help. */
export const withHelp = (nodes: Nodes): Nodes =>
  Object.fromEntries(
    Object.entries(nodes).map(([key, node]) => [key, { ...node, on: { ...node.on, ...helpOf(node) } }]),
  );
