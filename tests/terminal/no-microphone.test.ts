import { fileURLToPath } from 'node:url';
import { expect, it, onTestFinished } from 'vitest';
import { scratchFolder } from '../helpers/scratch.ts';
import { Tmux } from '../helpers/tmux.ts';

const CLI = fileURLToPath(new URL('../../src/terminal/cli.ts', import.meta.url));

it('says that it goes by keys where no microphone can be read, and not that it listens', async () => {
  const terminal = new Tmux({ columns: 110, rows: 40 });
  onTestFinished(() => terminal.close());
  const run = `${process.execPath} --import tsx ${CLI} --silent --log ${scratchFolder()}/record.jsonl`;
  // There are no recorders where there is nothing.
  terminal.enter(`PATH=/nowhere ${run}`);
  await terminal.shows('PROBLEM: No sound recorder');
  const screen = await terminal.shows('Ear: keys');
  expect(screen).not.toContain('Ear: microphone');
});
