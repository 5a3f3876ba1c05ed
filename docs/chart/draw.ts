import { phaseOf } from '../../machines/build-step.ts';
import { procedureFor } from '../../machines/first-start.ts';
import { reopenedBy } from '../../machines/reopening.ts';
import type { Step } from '../../machines/steps.ts';
import type { Cause } from '../../machines/vocabulary.ts';
import { english } from '../../prompts/en/index.ts';
import type { Profile } from '../../src/profile/schema.ts';

/** Sizes in the units of the drawing. */
const BOX = { width: 158, height: 62, gap: 8, perRow: 6 } as const;
const LEFT = 150;
const TOP = 190;
const CAUSE = 24;
const LANE_GAP = 14;

const tints: Record<Step['engine'], string> = { off: '#eef2f7', cranking: '#ffe3b8', running: '#d9f2dd' };
const kinds: Record<Step['kind'], string> = {
  confirm: 'say',
  reading: 'read',
  hold: 'wait',
  lamps: 'lamps',
  sensors: 'list',
  crank: 'crank',
  watch: 'watch',
  inspect: 'look',
  faults: 'codes',
};
const people = { technician: 'T', second: '2', supervisor: 'S' } as const;

const inXml = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

const label = (
  x: number,
  y: number,
  content: string,
  { size = 11, colour = '#1c2733', weight = 'normal', turned = false } = {},
) =>
  `<text x="${x}" y="${y}" font-size="${size}" fill="${colour}" font-weight="${weight}"${
    turned ? ` transform="rotate(-60 ${x} ${y})"` : ''
  }>${inXml(content)}</text>`;

/** Words in lines of at most so many letters, no more than so many lines. */
function wrap(text: string, letters: number, lines: number): string[] {
  const rows = [''];
  for (const word of text.split(' ')) {
    const last = rows.at(-1) ?? '';
    if (last === '') rows[rows.length - 1] = word;
    else if (last.length + 1 + word.length <= letters) rows[rows.length - 1] = `${last} ${word}`;
    else rows.push(word);
  }
  return rows.length > lines ? [...rows.slice(0, lines - 1), `${rows[lines - 1]} …`] : rows;
}

function box(step: Step, before: Step | undefined, x: number, y: number): string {
  const title = wrap(english.steps[step.id].title, 22, 2);
  // What the step before needs already is not said again.
  const needs = (step.needs ?? []).filter(gate => !(before?.needs ?? []).includes(gate));
  const gateLines = [
    ...(step.gate
      ? [label(x + 8, y + 43, `▲ ${english.gates[step.gate]}`, { size: 9, colour: '#0b6b2e' })]
      : []),
    ...(needs.length > 0
      ? [
          label(
            x + 8,
            y + 55,
            `▼ ${needs.length > 1 ? `${needs.length} gates` : needs.map(gate => english.gates[gate]).join(', ')}`,
            { size: 9, colour: '#a3261b' },
          ),
        ]
      : []),
  ];
  const all = (step.needs ?? []).map(gate => english.gates[gate]).join(', ');
  return [
    `<g><title>${inXml(`${step.id}${all === '' ? '' : `; needs ${all}`}`)}</title>`,
    `<rect x="${x}" y="${y}" width="${BOX.width}" height="${BOX.height}" rx="5" fill="${tints[step.engine]}" stroke="#5b6b7c"${step.when ? ' stroke-dasharray="4 3"' : ''}/>`,
    ...title.map((row, index) => label(x + 8, y + 15 + 12 * index, row, { weight: 'bold', size: 10.5 })),
    label(x + BOX.width - 42, y + 55, `${kinds[step.kind]} ${people[step.by]}`, {
      size: 9,
      colour: '#5b6b7c',
    }),
    ...gateLines,
    '</g>',
  ].join('');
}

/** How much of a phase a cause puts back on the list. */
function reopens(cause: Cause, steps: readonly Step[]): 'all' | 'some' | 'none' {
  const hit = steps.filter(({ id }) =>
    reopenedBy[cause].some(entry => (entry.endsWith('.') ? id.startsWith(entry) : id === entry)),
  );
  return hit.length === 0 ? 'none' : hit.length === steps.length ? 'all' : 'some';
}

const dot = (x: number, y: number, how: 'all' | 'some' | 'none') =>
  how === 'none'
    ? ''
    : `<circle cx="${x}" cy="${y}" r="6" fill="${how === 'all' ? '#a3261b' : 'none'}" stroke="#a3261b" stroke-width="2"/>`;

/**
 * The procedure of one engine as one picture: a lane for each phase with its steps in their order, the gates that each
 * sets and needs, and, to the right, what each cause of a stop puts back on the list.
 */
export function chart(profile: Profile): string {
  const steps = procedureFor(profile);
  const phases = [...new Set(steps.map(({ id }) => phaseOf(id)))];
  const causes = (Object.keys(reopenedBy) as Cause[]).filter(cause => reopenedBy[cause].length > 0);
  const lanesWidth = BOX.perRow * (BOX.width + BOX.gap);
  const causesX = LEFT + lanesWidth + 20;
  const width = causesX + causes.length * CAUSE + 120;
  let y = TOP;
  const lanes = phases.map(phase => {
    const own = steps.filter(({ id }) => phaseOf(id) === phase);
    const rows = Math.ceil(own.length / BOX.perRow);
    const height = rows * (BOX.height + BOX.gap) - BOX.gap;
    const laneY = y;
    y += height + LANE_GAP;
    const middle = laneY + height / 2;
    const keyOff = phase === 'keyOn';
    return [
      keyOff
        ? `<line x1="8" x2="${width - 8}" y1="${laneY - LANE_GAP / 2}" y2="${laneY - LANE_GAP / 2}" stroke="#a3261b" stroke-dasharray="7 4"/>`
        : '',
      ...wrap((english.phases as Record<string, string>)[phase] ?? phase, 14, 3).map((row, index) =>
        label(12, laneY + 18 + 16 * index, row, { size: 14, weight: 'bold' }),
      ),
      ...own.map((step, index) =>
        box(
          step,
          own[index - 1],
          LEFT + (index % BOX.perRow) * (BOX.width + BOX.gap),
          laneY + Math.floor(index / BOX.perRow) * (BOX.height + BOX.gap),
        ),
      ),
      ...causes.map((cause, index) => dot(causesX + CAUSE * index + 8, middle, reopens(cause, own))),
    ].join('\n');
  });
  const height = y + 10;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="DejaVu Sans, sans-serif" role="img" aria-label="The phases and steps of a first start, with gates and the ways after a stop">`,
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    label(12, 30, `A first start: ${profile.name}`, { size: 18, weight: 'bold' }),
    label(
      12,
      52,
      'Each lane is a phase, left to right. ▲ sets a gate, ▼ is not begun before its gates are met. Blue: engine off; amber: the starter turns it; green: it runs. Dashed: only where it applies.',
    ),
    label(
      12,
      70,
      'T, 2, S: technician, second person, supervisor. A stop leads out of every step; everything off, then the cause, then back to the first step that is no longer done.',
    ),
    label(
      12,
      88,
      'To the right: what a cause puts back on the list (full: the whole phase; ring: some of it). What was found below the dashed red line never outlives a stop, unless the engine had been shut down well.',
    ),
    ...causes.map((cause, index) =>
      label(causesX + CAUSE * index + 10, TOP - 8, english.causes[cause], { size: 11, turned: true }),
    ),
    ...lanes,
    '</svg>',
    '',
  ].join('\n');
}
