import { describe, expect, it } from 'vitest';
import { lookOf, type Tone } from '../../../src/terminal/face/line.ts';

const tones: readonly Tone[] = [
  'normal',
  'strong',
  'faint',
  'good',
  'bad',
  'title',
  'alarm',
  'cranking',
  'running',
  'held',
];

describe('looks without colour', () => {
  it('have no colour anywhere', () => {
    for (const tone of tones) {
      expect(lookOf(tone, false)).not.toHaveProperty('color');
      expect(lookOf(tone, false)).not.toHaveProperty('backgroundColor');
    }
  });

  it('turn the banners over', () => {
    for (const tone of ['alarm', 'cranking', 'running', 'held'] as const)
      expect(lookOf(tone, false)).toMatchObject({ inverse: true, bold: true });
  });
});
