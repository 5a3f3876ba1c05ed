import { Text } from 'ink';
import { lookOf, type Row } from './line.ts';

/** Rows as they are: each has been made to fit before. */
export function Rows({ rows, colour }: { readonly rows: readonly Row[]; readonly colour: boolean }) {
  return rows.map((row, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place on the screen
    <Text key={index} wrap="truncate">
      {row.every(({ text }) => text === '')
        ? ' '
        : row.map(({ text, tone }, column) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: so is a column
            <Text key={column} {...lookOf(tone, colour)}>
              {text}
            </Text>
          ))}
    </Text>
  ));
}
