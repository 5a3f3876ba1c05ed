export const frenchPronunciations: Readonly<Record<string, readonly string[]>> = {};
