import type { HeardLanguage } from '../../src/voice/ports.ts';

/**
 * What phones have in common, by the usual features of phonetics (from memory): a vowel by how open and how far back the
 * tongue is and whether the lips are round, from its beginning to its end; a consonant by its place from lips to throat,
 * its manner, and its voice.
 */
type Phone =
  | {
      readonly kind: 'vowel';
      readonly from: readonly [open: number, back: number, round: number];
      readonly to: readonly [open: number, back: number, round: number];
      readonly nasal: boolean;
    }
  | { readonly kind: 'consonant'; readonly place: number; readonly manner: Manner; readonly voiced: boolean };

type Manner = 'stop' | 'affricate' | 'fricative' | 'nasal' | 'liquid' | 'glide';

const spots: Readonly<Record<string, readonly [number, number, number]>> = {
  i: [0, 0, 0],
  I: [0.2, 0.2, 0],
  e: [0.35, 0, 0],
  E: [0.6, 0.1, 0],
  ae: [0.85, 0.1, 0],
  y: [0, 0, 1],
  oe: [0.5, 0.1, 1],
  schwa: [0.5, 0.5, 0],
  er: [0.5, 0.5, 0.6],
  a: [1, 0.6, 0],
  A: [0.6, 0.7, 0],
  O: [0.7, 1, 1],
  o: [0.4, 1, 1],
  U: [0.2, 0.8, 0.8],
  u: [0, 1, 1],
};
const vowel = (from: string, to = from, nasal = false): Phone => ({
  kind: 'vowel',
  from: spots[from] ?? [0.5, 0.5, 0],
  to: spots[to] ?? [0.5, 0.5, 0],
  nasal,
});
const consonant = (place: number, manner: Manner, voiced: boolean): Phone => ({
  kind: 'consonant',
  place,
  manner,
  voiced,
});

const consonants = {
  p: consonant(0, 'stop', false),
  b: consonant(0, 'stop', true),
  m: consonant(0, 'nasal', true),
  w: consonant(0, 'glide', true),
  f: consonant(0.15, 'fricative', false),
  v: consonant(0.15, 'fricative', true),
  th: consonant(0.3, 'fricative', false),
  dh: consonant(0.3, 'fricative', true),
  t: consonant(0.45, 'stop', false),
  d: consonant(0.45, 'stop', true),
  n: consonant(0.45, 'nasal', true),
  s: consonant(0.45, 'fricative', false),
  z: consonant(0.45, 'fricative', true),
  l: consonant(0.45, 'liquid', true),
  r: consonant(0.55, 'liquid', true),
  sh: consonant(0.6, 'fricative', false),
  zh: consonant(0.6, 'fricative', true),
  ch: consonant(0.6, 'affricate', false),
  jh: consonant(0.6, 'affricate', true),
  y: consonant(0.7, 'glide', true),
  k: consonant(0.85, 'stop', false),
  g: consonant(0.85, 'stop', true),
  ng: consonant(0.85, 'nasal', true),
  uvular: consonant(0.9, 'liquid', true),
  h: consonant(1, 'fricative', false),
};

const english: Readonly<Record<string, Phone>> = {
  AA: vowel('a'),
  AE: vowel('ae'),
  AH: vowel('schwa', 'A'),
  AO: vowel('O'),
  AW: vowel('a', 'U'),
  AY: vowel('a', 'I'),
  EH: vowel('E'),
  ER: vowel('er'),
  EY: vowel('e', 'I'),
  IH: vowel('I'),
  IY: vowel('i'),
  OW: vowel('o', 'U'),
  OY: vowel('O', 'I'),
  UH: vowel('U'),
  UW: vowel('u'),
  B: consonants.b,
  CH: consonants.ch,
  D: consonants.d,
  DH: consonants.dh,
  F: consonants.f,
  G: consonants.g,
  HH: consonants.h,
  JH: consonants.jh,
  K: consonants.k,
  L: consonants.l,
  M: consonants.m,
  N: consonants.n,
  NG: consonants.ng,
  P: consonants.p,
  R: consonants.r,
  S: consonants.s,
  SH: consonants.sh,
  T: consonants.t,
  TH: consonants.th,
  V: consonants.v,
  W: consonants.w,
  Y: consonants.y,
  Z: consonants.z,
  ZH: consonants.zh,
};

const french: Readonly<Record<string, Phone>> = {
  a: vowel('a'),
  ɛ: vowel('E'),
  ɑ̃: vowel('a', 'O', true),
  o: vowel('o'),
  ə: vowel('schwa'),
  e: vowel('e'),
  ø: vowel('oe'),
  i: vowel('i'),
  ɛ̃: vowel('ae', 'ae', true),
  œ: vowel('oe', 'E'),
  ɔ̃: vowel('o', 'o', true),
  ɔ: vowel('O'),
  u: vowel('u'),
  y: vowel('y'),
  b: consonants.b,
  ʃ: consonants.sh,
  d: consonants.d,
  f: consonants.f,
  ɡ: consonants.g,
  ŋ: consonants.ng,
  ʒ: consonants.zh,
  k: consonants.k,
  l: consonants.l,
  m: consonants.m,
  n: consonants.n,
  p: consonants.p,
  ʁ: consonants.uvular,
  s: consonants.s,
  t: consonants.t,
  ɥ: consonants.y,
  v: consonants.v,
  w: consonants.w,
  j: consonants.y,
  z: consonants.z,
};

const sets: Readonly<Record<HeardLanguage, Readonly<Record<string, Phone>>>> = { en: english, fr: french };

const apart = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, each, i) => sum + Math.abs(each - (b[i] ?? 0)), 0) / a.length;

/** What tells two manners apart; all others are told apart as well as can be. */
const manners: Readonly<Record<string, number>> = {
  'affricate stop': 0.4,
  'affricate fricative': 0.3,
  'fricative stop': 0.6,
  'glide liquid': 0.4,
  'liquid nasal': 0.6,
  'glide nasal': 0.7,
};

/** How well a phone is told from another: 0 the same, 1 as different as a vowel and a consonant. */
export function phoneDistance(language: HeardLanguage, one: string, other: string): number {
  if (one === other) return 0;
  const [a, b] = [sets[language][one], sets[language][other]];
  if (a === undefined || b === undefined)
    throw new RangeError(`${one} or ${other} is no phone of ${language}`);
  if (a.kind === 'vowel' && b.kind === 'vowel') {
    const oral = (apart(a.from, b.from) + apart(a.to, b.to)) / 2;
    return Math.min(1, 0.15 + oral + (a.nasal === b.nasal ? 0 : 0.2));
  }
  if (a.kind === 'vowel' || b.kind === 'vowel') return 1;
  const manner = a.manner === b.manner ? 0 : (manners[[a.manner, b.manner].sort().join(' ')] ?? 1);
  return Math.min(
    1,
    0.1 + 0.5 * Math.abs(a.place - b.place) + 0.6 * manner + (a.voiced === b.voiced ? 0 : 0.15),
  );
}

/** What it takes to miss a phone, or to hear one that is not there: consonants at the end of words, and schwas, get lost. */
function phoneWeight(language: HeardLanguage, phone: string): number {
  const known = sets[language][phone];
  if (known === undefined) throw new RangeError(`${phone} is no phone of ${language}`);
  if (known.kind === 'vowel') return ['AH', 'IH', 'ə'].includes(phone) ? 0.7 : 1;
  return known.manner === 'stop' || known.manner === 'nasal' || known.manner === 'glide' ? 0.55 : 0.7;
}

/** The least it takes to hear one spelling for another: phones for others, phones missed, phones that are not there. */
export function spellingDistance(
  language: HeardLanguage,
  one: readonly string[],
  other: readonly string[],
): number {
  let before = [0];
  for (const phone of other) before.push((before.at(-1) ?? 0) + phoneWeight(language, phone));
  for (const phone of one) {
    const now = [(before[0] ?? 0) + phoneWeight(language, phone)];
    other.forEach((heard, i) => {
      now.push(
        Math.min(
          (before[i] ?? 0) + phoneDistance(language, phone, heard),
          (before[i + 1] ?? 0) + phoneWeight(language, phone),
          (now[i] ?? 0) + phoneWeight(language, heard),
        ),
      );
    });
    before = now;
  }
  return before.at(-1) ?? 0;
}
