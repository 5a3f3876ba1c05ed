import type { Level } from '../accuracy.ts';
import { allOf, sum, type Taken } from '../count.ts';
import type { Results } from '../results.ts';
import { levelText, table } from './cells.ts';
import { togetherKinds } from './made.ts';
import { repliesIn } from './people.ts';

const levels: readonly Level[] = ['clean', 20, 10, 5, 0];

interface Line {
  readonly name: string;
  readonly of: string;
  readonly cell: (level: Level) => string | undefined;
}

const whole = (part: number, all: number) => ((100 * part) / Math.max(1, all)).toFixed(0);
const rightAndWrong = (taken: Taken | undefined) =>
  taken && `${whole(taken.right, allOf(taken))} / ${whole(taken.wrong + taken.falseStop, allOf(taken))} %`;

/** The rows of people's figures, each name once. */
const namesOf = (rows: readonly { readonly of: string }[]) => [...new Set(rows.map(({ of }) => of))];

function linesOfPeople(results: Results): readonly Line[] {
  const replies = repliesIn(results).flatMap(({ rows }) => rows);
  const stops = results.peopleStops?.rows ?? [];
  return [
    ...namesOf(replies).map((of): Line => {
      const rows = replies.filter(row => row.of === of);
      const [first] = rows;
      return {
        name: `people: ${of}`,
        of: first === undefined ? '' : `${allOf(first.taken)} by ${first.speakers}`,
        cell: level => rightAndWrong(rows.find(row => row.level === level)?.taken),
      };
    }),
    ...namesOf(stops).map((of): Line => {
      const rows = stops.filter(row => row.of === of);
      const [first] = rows;
      return {
        name: `people: "stop" ${of}, heard`,
        of: first === undefined ? '' : `${first.said} by ${first.speakers}`,
        cell: level => {
          const row = rows.find(each => each.level === level);
          return row && `${whole(row.heard, row.said)} %`;
        },
      };
    }),
  ];
}

function linesOfVoices({ accuracy }: Results): readonly Line[] {
  if (!accuracy) return [];
  const rowAt = (level: Level) => accuracy.rows.find(row => row.level === level);
  return Object.entries(togetherKinds).map(([name, kinds], i): Line => {
    const takenAt = (level: Level) => {
      const row = rowAt(level);
      if (level === 'clean') return i === 0 ? row?.taken : undefined;
      return row && sum(kinds.flatMap(kind => row.byNoise[kind] ?? []));
    };
    const some = takenAt(20) ?? takenAt(10);
    return {
      name: `made voices: replies in ${name}`,
      of: `${some ? allOf(some) : ''} by ${accuracy.voices.length}`,
      cell: level => rightAndWrong(takenAt(level)),
    };
  });
}

/** The most important figures in one table: right / wrong, and of stops how many are heard. */
export function shortTable(results: Results): string {
  const lines = [...linesOfPeople(results), ...linesOfVoices(results)];
  return table(
    ['right / wrong', ...levels.map(levelText), 'of'],
    lines.map(({ name, of, cell }) => [name, ...levels.map(level => cell(level) ?? ''), of]),
  );
}
