import { createInterface } from 'node:readline';
import type { View } from '../../session/view.ts';
import { plainLines } from './plain-lines.ts';
import type { Watched } from './use-view.ts';
import type { FaceWords } from './words/index.ts';

export interface PlainActions {
  onType(text: string): void;
}

export interface PlainStreams {
  readonly stdin: NodeJS.ReadableStream;
  readonly stdout: NodeJS.WritableStream;
}

/**
 * The face without a screen: prints what happens line by line and reads typed lines. The end of the input
 * ends only the reading, so that a session fed by a file or a microphone goes on.
 */
export function showPlain(
  viewer: Watched,
  words: FaceWords,
  { onType }: PlainActions,
  { stdin, stdout }: PlainStreams,
): { readonly done: Promise<void>; close(): void } {
  let shown: View | null = null;
  const print = () => {
    const view = viewer.view();
    for (const text of plainLines(shown, view, words)) stdout.write(`${text}\n`);
    shown = view;
  };
  const reader = createInterface({ input: stdin, terminal: false });
  reader.on('line', text => {
    if (text.trim() !== '') onType(text.trim());
  });
  // A pipe whose reader has gone must not take the session with it.
  stdout.on('error', () => close());
  const unwatch = viewer.watch(print);
  print();
  let settle: () => void = () => {};
  const done = new Promise<void>(resolve => {
    settle = resolve;
  });
  const close = () => {
    print();
    unwatch();
    reader.close();
    settle();
  };
  return { done, close };
}
