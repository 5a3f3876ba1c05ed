import { createInterface } from 'node:readline/promises';

/** Asks whoever sits at the terminal for a place to save to; undefined when nobody does, or nothing is typed. */
export async function askPlace(why: string): Promise<string | undefined> {
  if (!process.stdin.isTTY) return undefined;
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  try {
    const answer = await Promise.race([
      lines.question(`${why}\nFolder or file on another disk (nothing: give up): `),
      // Ctrl-D and Ctrl-C close the line without an answer.
      new Promise<string>(resolve => lines.once('close', () => resolve(''))),
    ]);
    return answer.trim() === '' ? undefined : answer.trim();
  } finally {
    lines.close();
  }
}
