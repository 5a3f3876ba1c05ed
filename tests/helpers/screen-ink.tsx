import { render } from 'ink-testing-library';
import { createElement } from 'react';
import { App, type AppProps } from '../../src/terminal/face/app.tsx';

/** The face on a screen of a given size, drawn by ink's testing library. */
export function faceOn(columns: number, rows: number, props: AppProps) {
  const shown = render(createElement(App, props));
  const resize = (toColumns: number, toRows: number) => {
    Object.defineProperties(shown.stdout, {
      columns: { value: toColumns, configurable: true },
      rows: { value: toRows, configurable: true },
    });
    shown.stdout.emit('resize');
  };
  resize(columns, rows);
  return {
    ...shown,
    resize,
    text: () => shown.lastFrame() ?? '',
    lines: () => (shown.lastFrame() ?? '').split('\n'),
  };
}
