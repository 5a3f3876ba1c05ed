import { z } from 'zod';
import { english } from '../../../prompts/en/index.ts';
import demoSix from '../../profile/demo/demo-six.json' with { type: 'json' };
import { fieldAt, fields, parts, type Section, sections } from '../../profile/fields.ts';
import { acceptedByName, neverAssumed } from '../../profile/provenance.ts';
import { profileSchema } from '../../profile/schema.ts';
import { fieldName } from './field-name.ts';

type Json = Record<string, unknown>;

const inner = (node: unknown, key: string): Json | undefined => {
  const value: unknown = typeof node === 'object' && node !== null ? Reflect.get(node, key) : undefined;
  return typeof value === 'object' && value !== null ? (value as Json) : undefined;
};

/** The parts of a schema that say what may stand here: itself, or each of what it may be. */
const branches = (node: Json): Json[] => {
  const any = node.anyOf ?? node.oneOf;
  return Array.isArray(any) ? any.filter((each): each is Json => typeof each === 'object') : [node];
};

interface Visit {
  readonly path: string;
  readonly node: Json;
  /** Nothing is inside it. */
  readonly leaf: boolean;
}

/** Every place of a JSON Schema, its lists written `[]`. */
function placesOf(node: Json, path = ''): Visit[] {
  const inside = branches(node).flatMap(branch => {
    const properties = inner(branch, 'properties') ?? {};
    const items = inner(branch, 'items');
    return [
      ...Object.keys(properties).flatMap(key => {
        const child = inner(properties, key);
        return child ? placesOf(child, path === '' ? key : `${path}.${key}`) : [];
      }),
      ...(items ? placesOf(items, `${path}[]`) : []),
    ];
  });
  const own: Visit = { path, node, leaf: inside.length === 0 };
  return path === '' ? inside : [own, ...inside];
}

/** What the invented six has at a path; undefined where it has nothing there. */
function exampleAt(path: string): unknown {
  let at: unknown = demoSix;
  for (const key of path.replaceAll('[]', '.0').split('.')) {
    at = typeof at === 'object' && at !== null ? Reflect.get(at, key) : undefined;
    if (at === undefined) return undefined;
  }
  return at;
}

/** What is said of a place beside its type. */
function describe({ path, node, leaf }: Visit): void {
  const field = fieldAt(path);
  const section = Object.hasOwn(sections, path) ? sections[path as Section] : undefined;
  if (field) {
    const unit = field.unit === undefined ? '' : ` In ${field.unit}.`;
    node.description = `${sentence(fieldName(path, english))}${unit} Why: ${field.why}. Where: ${field.where}.`;
  } else if (section !== undefined) node.description = `${section}.`;
  if (field?.unit !== undefined) node['x-unit'] = field.unit;
  const example = exampleAt(path);
  if (leaf && example !== undefined) node.examples = [example];
}

const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** The JSON Schema of a profile file: what an editor completes and checks by. */
export function jsonSchema(): Json {
  const made = z.toJSONSchema(profileSchema, { io: 'input' }) as Json;
  for (const place of placesOf(made)) if (!place.path.startsWith('provenance.')) describe(place);
  return {
    $schema: made.$schema,
    title: 'Engine profile of first-fire',
    description:
      'One engine in one vehicle, as its maker’s documents describe it. What figures have to be to each other is checked by "engine check".',
    ...made,
  };
}

/** Paths of the schema of which nothing is said. */
export const undocumented = (): string[] =>
  placesOf(z.toJSONSchema(profileSchema, { io: 'input' }) as Json)
    .filter(({ path }) => !path.startsWith('provenance.'))
    // What a list holds has its words at the list, or at the parts of its rows.
    .filter(({ path }) => !fieldAt(path) && !Object.hasOwn(sections, path) && !path.endsWith('[]'))
    .map(({ path }) => path);

/** Paths that are spoken of and that no schema has. */
export function unknownPaths(): string[] {
  const paths = placesOf(z.toJSONSchema(profileSchema, { io: 'input' }) as Json).map(({ path }) => path);
  return [...Object.keys(fields), ...Object.keys(parts), ...Object.keys(sections)].filter(
    path => !paths.includes(path),
  );
}

const cell = (text: string) => text.replaceAll('|', '\\|');

function limitsOf(node: Json): string {
  const [own = node] = branches(node);
  const { minimum, maximum, enum: choices, const: only, type } = own;
  if (Array.isArray(choices)) return choices.map(String).join(', ');
  if (only !== undefined) return String(only);
  if (typeof minimum === 'number' && typeof maximum === 'number' && Math.abs(maximum) < 1e9)
    return `${minimum} to ${maximum}`;
  return type === 'boolean' ? 'true or false' : '';
}

/** The page of all fields. */
export function fieldsPage(): string {
  const places = new Map(placesOf(jsonSchema()).map(({ path, node }) => [path, node]));
  const never: readonly string[] = neverAssumed;
  const byName: readonly string[] = Object.values(acceptedByName).flat();
  const rows = (paths: readonly string[]) =>
    paths.map(path => {
      const field = fieldAt(path);
      const node = places.get(path) ?? {};
      const mark = never.includes(path) ? ' **never assumed**' : byName.includes(path) ? ' *by name*' : '';
      const example: unknown = exampleAt(path);
      const shown = typeof example === 'object' ? '' : `${example ?? ''}`;
      return `| \`${path}\`${mark} | ${cell(fieldName(path, english))} | ${field?.unit ?? ''} | ${cell(limitsOf(node))} | ${cell(shown)} | ${cell(field?.why ?? '')} | ${cell(field?.where ?? '')} |`;
    });
  const head = [
    '| field | what | unit | allowed | in the invented six | why | where it is found |',
    '|---|---|---|---|---|---|---|',
  ];
  return [
    '# Every field of an engine profile',
    '',
    'Made by `npm start -- engine schema --write` from the same words as the',
    '[JSON Schema](engine-profile.schema.json) and the interview (`npm start -- engine new`). A profile that names the',
    'schema in its `$schema` is completed and checked by most editors.',
    '',
    'Each value says in `provenance` where it comes from: plate, manual (page), measured, computed (rule) or assumed.',
    'Before the first fire of a real engine those marked **never assumed** have to be read or measured; those marked',
    '*by name* may stay assumed where the supervisor accepts them by name (`engine accept`).',
    '',
    '## Values',
    '',
    ...head,
    ...rows(Object.keys(fields)),
    '',
    '## About the profile itself, and inside of values',
    '',
    ...head,
    ...rows(Object.keys(parts)),
    '',
  ].join('\n');
}
