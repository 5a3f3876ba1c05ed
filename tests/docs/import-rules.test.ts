import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';

const require = createRequire(import.meta.url);
const { forbidden } = require('../../.dependency-cruiser.cjs') as {
  readonly forbidden: readonly { readonly name: string; readonly from: unknown; readonly to: unknown }[];
};

/** The patterns of a rule's side: a string, a list of them, or none. */
const patterns = (side: unknown): readonly string[] =>
  Object.values((side ?? {}) as Record<string, unknown>)
    .flat()
    .filter((each): each is string => typeof each === 'string' && /[/^]/.test(each));

/** Every folder that a pattern names: `^src/bus/(formats|transport)/` names two. */
function foldersIn(pattern: string): readonly string[] {
  const bare = pattern.replace(/\(\?![^)]*\)/g, '').replace(/^\^/, '');
  const choice = bare.match(/^([\w/.-]*)\(([\w|/.-]+)\)(.*)$/);
  if (choice)
    return choice[2]?.split('|').flatMap(each => foldersIn(`${choice[1]}${each}${choice[3]}`)) ?? [];
  const path = bare.match(/^[\w/-]*/)?.[0].replace(/\/$/, '') ?? '';
  return /^(src|machines|prompts|bench|tests|docs)\b/.test(path) ? [path] : [];
}

describe('the rules of who may import whom', () => {
  it.each(forbidden.map(rule => [rule.name, rule] as const))(
    '%s names only folders that there are',
    (_, rule) => {
      const named = [...patterns(rule.from), ...patterns(rule.to)].flatMap(foldersIn);
      const gone = named.filter(path => ![path, `${path}.ts`, `${path}.tsx`].some(existsSync));
      expect(gone).toEqual([]);
    },
  );

  it('reads what a pattern names', () => {
    expect(foldersIn('^src/bus/(formats|transport)/')).toEqual(['src/bus/formats', 'src/bus/transport']);
    expect(foldersIn('^(src|machines)/')).toEqual(['src', 'machines']);
    expect(foldersIn('^src/record/(?!vocabulary/)')).toEqual(['src/record']);
  });
});
