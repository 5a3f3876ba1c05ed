import { describe, expect, it } from 'vitest';
import { Painter } from '../../../src/terminal/face/painter.ts';

function painted(rows = 300) {
  const written: string[] = [];
  const painter = new Painter(
    text => written.push(text),
    () => rows,
  );
  return { painter, take: () => written.splice(0).join('') };
}

describe('the painter', () => {
  it('works on the alternate screen with the cursor hidden, and gives both back', () => {
    const { painter, take } = painted();
    painter.open();
    expect(take()).toContain('\x1b[?1049h\x1b[?25l');
    painter.close();
    expect(take()).toBe('\x1b[0m\x1b[?25h\x1b[?1049l');
    painter.close();
    painter.paint('late');
    painter.resized();
    expect(take()).toBe('');
  });

  it('writes only lines that changed, each at its place', () => {
    const { painter, take } = painted();
    painter.open();
    painter.paint('one\ntwo\nthree');
    take();
    painter.paint('one\n2\nthree');
    expect(take()).toBe('\x1b[?2026h\x1b[2;1H2\x1b[0m\x1b[K\x1b[?2026l');
    painter.paint('one\n2\nthree');
    expect(take()).toBe('');
    painter.paint('one');
    expect(take()).toContain('\x1b[3;1H\x1b[0m\x1b[K');
  });

  it('writes everything again after a resize, and once in a while', () => {
    const { painter, take } = painted();
    painter.open();
    painter.paint('one\ntwo');
    painter.resized();
    take();
    painter.paint('one\ntwo');
    expect(take()).toMatch(/one.*two/);
    for (let frame = 0; frame < 100; frame += 1) painter.paint('one\ntwo');
    expect(take().split('one').length - 1).toBe(2);
  });

  it('leaves away what lies below the last row, so that nothing lands in it', () => {
    const { painter, take } = painted(2);
    painter.open();
    painter.paint('one\ntwo\nthree');
    painter.paint('one\ntwo');
    const written = take();
    expect(written).not.toContain('three');
    expect(written).not.toContain('\x1b[3;');
  });

  it('never clears the scroll-back', () => {
    const { painter, take } = painted();
    painter.open();
    painter.paint(Array.from({ length: 200 }, (_, row) => `line ${row}`).join('\n'));
    painter.resized();
    painter.close();
    expect(take()).not.toContain('\x1b[3J');
  });
});
