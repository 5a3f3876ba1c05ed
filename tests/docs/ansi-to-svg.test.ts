import { describe, expect, it } from 'vitest';
import { ansiToSvg } from '../../docs/ansi-to-svg.ts';

/** ECMA-48 (5th edition, 1991), 8.3.117: 1 bold, 2 faint, 7 negative, 31 red, 39 default colour, 41 red ground. */
const svg = (ansi: string) => ansiToSvg(ansi, 'a terminal');

describe('the picture of a terminal', () => {
  it('is as large as the text', () => {
    expect(svg('abc\nde\n')).toContain('viewBox="0 0 47 60"');
    expect(svg('abc\nde\n\n\n')).toContain('viewBox="0 0 47 60"');
  });

  it('puts a run of one style in one element, in its columns', () => {
    const picture = svg('ab\x1b[1mcd\x1b[0m長');
    expect(picture).toContain('<text x="10" y="25" textLength="18" fill="#d7dae0">ab</text>');
    expect(picture).toContain(
      '<text x="28" y="25" textLength="18" fill="#d7dae0" font-weight="bold">cd</text>',
    );
    expect(picture).toContain('<text x="46" y="25" textLength="18" fill="#d7dae0">長</text>');
  });

  it('knows named, bright, indexed and direct colours', () => {
    expect(svg('\x1b[31ma')).toContain('fill="#e05561">a');
    expect(svg('\x1b[97ma')).toContain('fill="#ffffff">a');
    expect(svg('\x1b[38;5;196ma')).toContain('fill="#ff0000">a');
    expect(svg('\x1b[38;5;232ma')).toContain('fill="#080808">a');
    expect(svg('\x1b[38;2;1;2;3;1ma')).toContain('fill="#010203" font-weight="bold">a');
    expect(svg('\x1b[41m \x1b[39ma')).toContain(
      '<rect x="10" y="10" width="9" height="20" fill="#e05561"/><rect x="19"',
    );
  });

  it('turns ink and ground over for inverse', () => {
    expect(svg('\x1b[7ma')).toContain(
      'height="20" fill="#d7dae0"/><text x="10" y="25" textLength="9" fill="#16181d">a',
    );
  });

  it('lets a style go on over the end of a line', () => {
    expect(svg('\x1b[1ma\nb')).toContain('font-weight="bold">b');
  });

  it('draws blocks as rectangles that join', () => {
    expect(svg('██')).toContain('<rect x="10" y="10" width="18" height="20" fill="#d7dae0"/>');
    expect(svg('▄')).toContain('<rect x="10" y="20" width="9" height="10" fill="#d7dae0"/>');
  });

  it('escapes what XML would take for markup, and leaves other sequences out', () => {
    expect(svg('\x1b[2J<a>&"\x1b[K')).toContain('>&lt;a&gt;&amp;&quot;</text>');
    expect(ansiToSvg('a', 'a < b')).toContain('<title>a &lt; b</title>');
  });
});
