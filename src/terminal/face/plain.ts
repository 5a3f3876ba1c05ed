import { createInterface } from 'node:readline';
import type { View } from '../../session/view.ts';
import type { Face, FaceActions } from './face.ts';
import { keysIn } from './keys.ts';
import { type Asked, askedLines, plainLines } from './plain-lines.ts';
import type { Watched } from './use-view.ts';
import type { FaceWords } from './words/index.ts';

interface PlainStreams {
  readonly stdin: NodeJS.ReadableStream & { readonly isTTY?: boolean };
  readonly stdout: NodeJS.WritableStream;
}

/**
 * The face without a screen: prints what happens line by line and reads typed lines; Escape in a line means stop.
 * Ctrl-C comes as a signal here, and leaves as on the screen the second time, if nothing was typed in between.
 */
export function showPlain(
  viewer: Watched,
  words: FaceWords,
  { onType, onStop, onLeave, onKeysEnded }: FaceActions,
  { stdin, stdout }: PlainStreams,
): Face {
  let shown: View | null = null;
  let asked: Asked | null = null;
  let [leaving, closed] = [false, false];
  const print = () => {
    const view = viewer.view();
    const lines = plainLines(shown, view, words);
    shown = view;
    if (viewer.isAsked?.() ?? true) {
      const [more, printed] = askedLines(asked, view, words);
      lines.push(...more);
      asked = printed;
    }
    for (const text of lines) stdout.write(`${text}\n`);
  };
  const reader = createInterface({ input: stdin, terminal: false });
  reader.on('line', text => {
    leaving = false;
    if (keysIn(text).some(({ kind }) => kind === 'stop')) onStop();
    else if (text.trim() !== '') onType(text.trim());
  });
  const ended = () => {
    if (!closed) onKeysEnded();
  };
  reader.on('close', ended);
  reader.on('error', ended);
  // A pipe whose reader has gone must not take the session with it.
  stdout.on('error', () => {
    ended();
    close();
  });
  const unwatch = viewer.watch(print);
  print();
  let settle: () => void = () => {};
  const done = new Promise<void>(resolve => {
    settle = resolve;
  });
  const close = () => {
    if (closed) return;
    closed = true;
    print();
    unwatch();
    reader.close();
    settle();
  };
  const interrupt = () => {
    if (leaving || !stdin.isTTY) return onLeave();
    leaving = true;
    const warning = viewer.view().engine === 'off' ? [] : [words.leavingRunning];
    stdout.write(`${[words.leavingByLine, ...warning].join(' ')}\n`);
  };
  return { done, close, interrupt };
}
