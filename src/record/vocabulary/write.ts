import type { JsonObject } from '../json.ts';
import type { Kind, Written } from './kinds.ts';

/** Far more than anybody says or types at once; what is longer is cut, so that an entry is never refused for it. */
const LONGEST_TEXT = 4000;

const halfCharacters = /\p{Surrogate}/gu;

/** Through JSON, so that what is recorded is exactly what is read back, in whole characters. */
export const inJson = <K extends Kind>(data: Written<K>): JsonObject =>
  JSON.parse(
    JSON.stringify(data, (_, value: unknown) =>
      typeof value === 'string' ? value.slice(0, LONGEST_TEXT).replace(halfCharacters, '\uFFFD') : value,
    ),
  );
