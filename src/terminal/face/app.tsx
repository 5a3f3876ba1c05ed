import { Box } from 'ink';
import { useCallback, useRef, useState } from 'react';
import type { FaceActions } from './face.ts';
import type { Key } from './keys.ts';
import { Rows } from './rows.tsx';
import { screenRows } from './screen.ts';
import { nothingTyped, press } from './typing.ts';
import { useKeys } from './use-keys.ts';
import { useSize } from './use-size.ts';
import { useView, type Watched } from './use-view.ts';
import type { FaceWords } from './words/index.ts';

export interface AppProps extends Omit<FaceActions, 'onKeysEnded'> {
  readonly viewer: Watched;
  readonly words: FaceWords;
  /** False where colours are not wanted; everything is in words as well. */
  readonly colour?: boolean;
}

/** The whole face of a session in a terminal. */
export function App({ viewer, words, onType, onStop, onLeave, colour = true }: AppProps) {
  const view = useView(viewer);
  const size = useSize();
  const [typing, setTyping] = useState(nothingTyped);
  // Keys that arrive together have to see each other's effect before the next drawing.
  const latest = useRef(typing);
  const onKey = useCallback(
    (key: Key) => {
      const { typing: after, act } = press(latest.current, key);
      latest.current = after;
      setTyping(after);
      if (act?.kind === 'stop') onStop();
      if (act?.kind === 'type') onType(act.text);
      if (act?.kind === 'leave') onLeave();
    },
    [onType, onStop, onLeave],
  );
  useKeys(onKey);
  return (
    <Box flexDirection="column" width={size.columns}>
      <Rows rows={screenRows(view, size, typing, words)} colour={colour} />
    </Box>
  );
}
