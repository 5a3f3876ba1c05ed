import { describe, expect, it } from 'vitest';
import { style } from '../../src/report/html/style.ts';
import { colors, softColors, toneColors } from '../../src/report/pdf/palette.ts';

/** WCAG 2.1, success criterion 1.4.3: the least contrast of body text with what is behind it. */
const LEAST_FOR_TEXT = 4.5;

/** Relative luminance of a colour #rgb or #rrggbb, as WCAG 2.1 defines it. */
function luminance(colour: string): number {
  const digits =
    colour.length === 4 ? [...colour.slice(1)].map(digit => digit + digit) : colour.slice(1).match(/../g);
  const [red = 0, green = 0, blue = 0] = (digits ?? []).map(pair => {
    const share = Number.parseInt(pair, 16) / 255;
    return share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

/** The colours of the page by name, in its light and in its dark form. */
const schemes = [...style.matchAll(/:root\{(?:color-scheme:light dark;)?(--paper:[^}]*)\}/g)].map(
  ([, block = '']) =>
    Object.fromEntries(block.split(';').map(pair => pair.replace('--', '').split(':') as [string, string])),
);

describe('contrast', () => {
  it('is measured as the standard measures it', () => {
    expect(contrast('#000', '#fff')).toBeCloseTo(21, 9);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });

  it.each([0, 1])('of every text of the page is enough to be read, light and dark', scheme => {
    const colour = (name: string) => schemes[scheme]?.[name] ?? 'missing';
    const pairs = [
      ...['ink', 'muted', 'good', 'bad', 'warn'].flatMap(text => [
        [text, 'paper'],
        [text, 'soft'],
      ]),
      ...['good', 'bad', 'warn'].map(tone => [tone, `${tone}-soft`]),
      ['muted', 'band-a'],
    ];
    for (const [text = '', behind = ''] of pairs)
      expect(contrast(colour(text), colour(behind)), `${text} on ${behind}`).toBeGreaterThanOrEqual(
        LEAST_FOR_TEXT,
      );
  });

  it('of every text of the PDF is enough to be read', () => {
    for (const text of [colors.ink, ...Object.values(toneColors)])
      for (const behind of ['#ffffff', colors.soft])
        expect(contrast(text, behind)).toBeGreaterThanOrEqual(LEAST_FOR_TEXT);
    for (const tone of ['good', 'bad', 'warn'] as const)
      expect(contrast(toneColors[tone], softColors[tone])).toBeGreaterThanOrEqual(LEAST_FOR_TEXT);
  });
});
