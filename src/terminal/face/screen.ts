import type { View } from '../../session/view.ts';
import { type Line, line, type Row } from './line.ts';
import { bannerLine } from './parts/banner.ts';
import { busLine } from './parts/bus.ts';
import { callOutLines } from './parts/call-outs.ts';
import { choices, controls } from './parts/choices.ts';
import { engineEarLine } from './parts/engine-ear.ts';
import { headline } from './parts/headline.ts';
import { hearing } from './parts/hearing.ts';
import { holdBar, LARGE_ROWS } from './parts/hold-bar.ts';
import { hintLine, inputLine } from './parts/input-line.ts';
import { logTail } from './parts/log-tail.ts';
import { firstRows, panel } from './parts/panel.ts';
import { problems } from './parts/problems.ts';
import { promptBox } from './parts/prompt.ts';
import { sights } from './parts/sights.ts';
import { titleBar } from './parts/title-bar.ts';
import { share, type Wish } from './share.ts';
import { cut, widthOf } from './text.ts';
import type { Typing } from './typing.ts';
import type { FaceWords } from './words/index.ts';

export interface Size {
  readonly columns: number;
  readonly rows: number;
}

/** From top to bottom, at the head of the screen. */
const upper = [
  'titleBar',
  'banner',
  'callOuts',
  'gapAboveHeadline',
  'headline',
  'gapAbovePrompt',
  'prompt',
  'choices',
  'controls',
  'gapAboveTimer',
  'timer',
  'gapAbovePanel',
  'panel',
  'gapAboveLog',
  'log',
] as const;

/** The same, at the foot of the screen. */
const lower = ['sights', 'problems', 'bus', 'engineEar', 'hearing', 'input', 'hint'] as const;

type Part = (typeof upper)[number] | (typeof lower)[number];

const LARGEST_TIMER_ROWS = 5;
const TALL_BANNER = 3;
const MOST_PROBLEM_ROWS = 8;

/** What matters most first: what happens, what is asked, how to stop; then how well it can be read. */
function wishes(view: View, { columns, rows }: Size, words: FaceWords): Wish<Part>[] {
  const headlineRows = (most: number) => headline(view, columns, most, words).length;
  const panelRows = (most: number) => panel(view, columns, most, words).length;
  const timerRows = view.timer ? 1 : 0;
  const bannered = bannerLine(view, columns, words).tone !== 'normal';
  const every = {
    callOuts: callOutLines(view.callOuts ?? [], columns).length,
    prompt: promptBox(view, columns, words).length,
    choices: choices(view, columns, words).length,
    problems: problems(view.problems, columns, words).length,
    newestProblem: problems(view.problems.slice(-1), columns, words).length,
    hearing: hearing(view.hearing, columns, words).length,
    controls: controls(view, columns, words).length,
    sights: sights(view.sights ?? [], columns, words).length,
  };
  return [
    { part: 'banner', rows: 1 },
    { part: 'hint', rows: 1 },
    { part: 'callOuts', rows: every.callOuts },
    { part: 'prompt', rows: Math.min(3, every.prompt) },
    { part: 'choices', rows: Math.min(2, every.choices) },
    { part: 'timer', rows: timerRows },
    { part: 'titleBar', rows: 1 },
    { part: 'input', rows: 1 },
    { part: 'prompt', rows: every.prompt },
    { part: 'choices', rows: every.choices },
    // Whole: what there is to do about it stands at its end.
    { part: 'problems', rows: every.newestProblem + (view.problems.length > 1 ? 1 : 0) },
    { part: 'hearing', rows: 1 },
    { part: 'bus', rows: view.bus ? 1 : 0 },
    { part: 'engineEar', rows: view.engineEar ? 1 : 0 },
    { part: 'sights', rows: every.sights },
    { part: 'timer', rows: timerRows * LARGE_ROWS, whole: true },
    { part: 'problems', rows: Math.min(MOST_PROBLEM_ROWS, every.problems) },
    { part: 'headline', rows: headlineRows(3), whole: true },
    { part: 'panel', rows: panelRows(4) },
    { part: 'controls', rows: every.controls },
    { part: 'headline', rows: headlineRows(6), whole: true },
    { part: 'hearing', rows: every.hearing },
    { part: 'log', rows: Math.min(3, view.log.length) },
    { part: 'panel', rows: panelRows(8) },
    { part: 'gapAboveHeadline', rows: Math.min(1, headlineRows(6)) },
    { part: 'gapAbovePanel', rows: 1 },
    { part: 'gapAbovePrompt', rows: 1 },
    { part: 'banner', rows: bannered ? TALL_BANNER : 1, whole: true },
    { part: 'timer', rows: timerRows * LARGEST_TIMER_ROWS, whole: true },
    { part: 'gapAboveTimer', rows: timerRows },
    { part: 'headline', rows: headlineRows(Math.floor(rows / 3)), whole: true },
    { part: 'panel', rows: panelRows(14) },
    { part: 'panel', rows: panelRows(rows), whole: true },
    { part: 'gapAboveLog', rows: 1 },
    { part: 'problems', rows: every.problems },
    { part: 'log', rows: view.log.length },
  ];
}

const blank = (rows: number): Line[] => Array.from({ length: Math.max(0, rows) }, () => line(''));

/** The parts keep to their width; in a terminal of a few columns not all of them can. */
function fitRow(row: Row, width: number): Row {
  let free = width;
  return row.map(({ text, tone }) => {
    const fitting = cut(text, free);
    free -= widthOf(fitting);
    return line(fitting, tone);
  });
}

function banner(view: View, width: number, rows: number, words: FaceWords): Line[] {
  const middle = bannerLine(view, width, words);
  const edge = line(' '.repeat(width), middle.tone);
  return rows >= TALL_BANNER ? [edge, middle, edge] : [middle];
}

/** All rows of the screen: as many as it has, never wider than it is. */
export function screenRows(view: View, size: Size, typing: Typing, words: FaceWords): Row[] {
  const width = size.columns;
  const given = share(size.rows, wishes(view, size, words));
  const draw = (part: Part, rows: number): readonly Line[] => {
    switch (part) {
      case 'titleBar':
        return [titleBar(view, width, words)];
      case 'banner':
        return banner(view, width, rows, words);
      case 'callOuts':
        return callOutLines(view.callOuts ?? [], width).slice(0, rows);
      case 'headline':
        return headline(view, width, rows, words);
      case 'prompt':
        return firstRows(promptBox(view, width, words), width, rows, words);
      case 'choices':
        return firstRows(choices(view, width, words), width, rows, words);
      case 'controls':
        return firstRows(controls(view, width, words), width, rows, words);
      case 'timer':
        return view.timer ? holdBar(view.timer, width, rows, words) : [];
      case 'log':
        return logTail(view.log, width, rows, words);
      case 'problems':
        return firstRows(problems(view.problems, width, words), width, rows, words);
      case 'bus':
        return view.bus ? [busLine(view.bus, width, words)] : [];
      case 'engineEar':
        return view.engineEar ? [engineEarLine(view.engineEar, width, words)] : [];
      case 'sights':
        return firstRows(sights(view.sights ?? [], width, words), width, rows, words);
      case 'hearing':
        return hearing(view.hearing, width, words).slice(0, rows);
      case 'input':
        return [inputLine(typing.typed, width, words)];
      case 'hint':
        return [hintLine(typing.leaving, view.engine, width, words)];
      default:
        return blank(rows);
    }
  };
  const drawn = (parts: readonly Part[]) =>
    parts.flatMap(part => {
      const rows = given.get(part) ?? 0;
      if (rows === 0) return [];
      return part === 'panel' ? panel(view, width, rows, words) : draw(part, rows).map(each => [each]);
    });
  const above = drawn(upper);
  const below = drawn(lower);
  const between = blank(size.rows - above.length - below.length).map(each => [each]);
  return [...above, ...between, ...below].map(row => fitRow(row, width));
}
