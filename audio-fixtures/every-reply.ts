import { english } from '../prompts/en/index.ts';

/** Figures of several kinds, as they are said; the tool's own parser says what they mean. */
const figures = [
  'four two',
  'forty two',
  'twelve point six',
  'one hundred eighty',
  'minus five',
  'oil pressure four two',
  'seven fifty',
  'fourteen point two volts',
];

/** Everything that may be said in a start: each wording of each reply, the control and stop words, and figures. */
export const everyReply: readonly string[] = [
  ...new Set([
    ...Object.values(english.replies).flat(),
    ...Object.values(english.controls).flat(),
    ...english.stopWordings,
    ...figures,
  ]),
];
