import type { Tone } from '../document/blocks.ts';
import type { Ink } from '../plot/scene.ts';

export const colors = {
  ink: '#1a1f24',
  muted: '#5a6570',
  rule: '#c9d0d8',
  soft: '#f1f3f6',
} as const;

export const toneColors: Readonly<Record<Tone, string>> = {
  good: '#0b6b3a',
  bad: '#b3150f',
  warn: '#8a5200',
  muted: colors.muted,
};

export const softColors: Readonly<Record<Tone, string>> = {
  good: '#e6f4ec',
  bad: '#fdeae8',
  warn: '#fdf2dd',
  muted: colors.soft,
};

/** The inks of drawings on white paper. */
export const inks: Readonly<Record<Ink, string>> = {
  axis: colors.ink,
  grid: colors.rule,
  label: colors.muted,
  reading: '#12539b',
  bad: '#b3150f',
  limit: '#b3150f',
  beyond: '#b3150f',
  bandA: '#f1f3f6',
  bandB: '#e6eaef',
  phase: '#5b7fa6',
  engine: '#3c8a4f',
  crank: '#c98a1b',
  stop: '#b3150f',
  drill: '#b3150f',
  held: '#8a6fb0',
};

export const BEYOND_OPACITY = 0.13;
