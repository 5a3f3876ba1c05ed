import type { Said } from '../../machines/context.ts';
import type { PromptValue } from '../../machines/vocabulary.ts';
import type { ValueField } from '../profile/fields.ts';
import { acceptedByName, assumedFields } from '../profile/provenance.ts';
import type { Profile } from '../profile/schema.ts';

/** More names than these nobody listens to: then the parts of the engine are named. */
const MOST_NAMES = 8;

const accepted: readonly ValueField[] = Object.values(acceptedByName).flat();

const groupOf = (path: ValueField): string => path.slice(0, Math.max(0, path.indexOf('.')));

/**
 * What is told of the values that are only assumed, before a start begins: what the supervisor accepted, by name, and
 * the others by name where they are few, else by the part of the engine that they belong to. Nothing where none is.
 */
export function assumedSaid(profile: Profile, first: Omit<Said, 'line'>): Said[] {
  const assumed = assumedFields(profile);
  const named = assumed.length <= MOST_NAMES ? assumed : assumed.filter(path => accepted.includes(path));
  const rest = assumed.filter(path => !named.includes(path));
  const groups = [...new Set(rest.map(groupOf))];
  const list: readonly PromptValue[] = [
    ...named.map(valueName => ({ valueName })),
    ...groups.filter(group => group !== '').map(valueGroup => ({ valueGroup })),
    ...(groups.includes('') ? [{ valueGroup: 'other' }] : []),
  ];
  if (assumed.length === 0) return [];
  const line = rest.length > 0 ? 'assumedMany' : assumed.length === 1 ? 'assumedOne' : 'assumedFew';
  return [{ ...first, line, values: { count: assumed.length, names: { list } } }];
}
