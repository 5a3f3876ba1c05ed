/**
 * What is taken at most. The small English model has 40 MB as published and 71 MB in 15 files unpacked; a model
 * several times as large neither fits a tablet's memory nor keeps up with speech there.
 */
export const modelLimits = {
  archiveBytes: 200_000_000,
  unpackedBytes: 400_000_000,
  files: 200,
  pathLength: 200,
} as const;

export type ModelLimits = { readonly [limit in keyof typeof modelLimits]: number };

export const inMb = (bytes: number): string => `${Math.round(bytes / 100_000) / 10} MB`;
