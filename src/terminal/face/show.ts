import { render } from 'ink';
import { createElement } from 'react';
import { App } from './app.tsx';
import type { Face, FaceActions } from './face.ts';
import { frameStream } from './frame-stream.ts';
import { onEnd } from './on-end.ts';
import { Painter } from './painter.ts';
import { showPlain } from './plain.ts';
import type { Watched } from './use-view.ts';
import type { FaceWords } from './words/index.ts';

export interface Terminal {
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
}

/**
 * Shows a session and takes keys until it is closed: on the whole screen of a terminal, or line by line
 * where there is none (a pipe, a file, TERM=dumb). The terminal is given back as it was however the process
 * ends, except by SIGKILL. Nothing else may write to the terminal meanwhile.
 */
export function showFace(viewer: Watched, words: FaceWords, actions: FaceActions, terminal: Terminal): Face {
  const { stdin, stdout } = terminal;
  const screen = stdin.isTTY && stdout.isTTY && process.env.TERM !== 'dumb';
  return screen ? showScreen(viewer, words, actions, terminal) : showPlain(viewer, words, actions, terminal);
}

function showScreen(
  viewer: Watched,
  words: FaceWords,
  actions: FaceActions,
  { stdin, stdout }: Terminal,
): Face {
  const painter = new Painter(
    text => stdout.write(text),
    () => stdout.rows,
  );
  const restore = () => {
    painter.close();
    if (stdin.isRaw) stdin.setRawMode(false);
  };
  const unhook = onEnd(restore);
  const resized = () => painter.resized();
  // A terminal that vanished must not take the session with it.
  const vanished = () => {
    close();
    actions.onKeysEnded();
  };
  // Before ink's own listener: the screen is cleared first, then drawn.
  stdout.on('resize', resized);
  stdout.on('error', vanished);
  stdin.on('error', vanished);
  stdin.on('end', vanished);
  // Ink does this after its first drawing; what is typed before would be echoed over it.
  stdin.setRawMode(true);
  painter.open();
  const app = render(createElement(App, { viewer, words, ...actions, colour: coloursWanted() }), {
    stdin,
    stdout: frameStream(stdout, frame => painter.paint(frame)),
    debug: true,
    exitOnCtrlC: false,
    patchConsole: false,
  });
  const end = () => {
    restore();
    unhook();
    stdout.off('resize', resized);
    stdin.off('end', vanished);
  };
  const close = () => {
    end();
    app.unmount();
  };
  return {
    done: app
      .waitUntilExit()
      .then(() => {})
      .finally(end),
    close,
    // Here Ctrl-C is a key; who sends the signal means it.
    interrupt: () => actions.onLeave(),
  };
}

/** The NO_COLOR convention: set to anything but nothing, no colours (https://no-color.org). */
const coloursWanted = () => (process.env.NO_COLOR ?? '') === '';
