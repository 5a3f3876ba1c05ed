/** The parts of an acoustic model without which nothing can be decoded. */
export const modelFiles = [
  'mdef',
  'means',
  'variances',
  'transition_matrices',
  'sendump',
  'dict.txt',
  'noisedict.txt',
  'feat_params.json',
  'phoneset.json',
] as const;
