import { mkdir, mkdtemp, readFile, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { BroughtEngines } from '../../../src/server/bay/brought-engines.ts';
import { changed, demoSix } from '../../machines/helpers/profiles.ts';

const engine = (name: string, allowedSkips = demoSix.allowedSkips) =>
  changed(demoSix, { name, allowedSkips });

async function kept() {
  const folder = await mkdtemp(join(tmpdir(), 'brought-'));
  const file = join(folder, 'engines.json');
  const told: string[] = [];
  const open = () => BroughtEngines.open(file, sentence => told.push(sentence));
  return { folder, file, told, open };
}

describe('The engines that tablets brought', () => {
  test('are there for the bay that brought them, and for no other', async () => {
    const { open } = await kept();
    const engines = await open();
    expect(engines.names('bay 1')).toEqual([]);
    engines.add('bay 1', engine('one'));
    await engines.settled();
    expect(engines.names('bay 1')).toEqual(['one']);
    expect(engines.of('bay 1', 'one')).toEqual(engine('one'));
    expect(engines.of('bay 1', 'two')).toBeUndefined();
    expect(engines.names('bay 2')).toEqual([]);
    expect(engines.of('bay 2', 'one')).toBeUndefined();
  });

  test('are there again after a restart, in a file that only its owner may read', async () => {
    const { file, told, open } = await kept();
    const engines = await open();
    engines.add('bay 1', engine('one'));
    engines.add('bay 2', engine('two'));
    await engines.settled();
    const again = await open();
    expect(again.of('bay 1', 'one')).toEqual(engine('one'));
    expect(again.names('bay 2')).toEqual(['two']);
    expect((await stat(file)).mode & 0o777).toBe(0o600);
    expect(told).toEqual([]);
  });

  test('take the place of those of the same name', async () => {
    const { open } = await kept();
    const engines = await open();
    engines.add('bay', engine('one'));
    engines.add('bay', engine('two'));
    engines.add('bay', engine('one', []));
    expect(engines.names('bay')).toEqual(['two', 'one']);
    expect(engines.of('bay', 'one')?.allowedSkips).toEqual([]);
    await engines.settled();
  });

  test('are eight of each bay; the one that was brought first goes first', async () => {
    const { open } = await kept();
    const engines = await open();
    engines.add('other bay', engine('of the other'));
    for (let count = 1; count <= 8; count += 1) engines.add('bay', engine(`engine ${count}`));
    expect(engines.names('bay')).toHaveLength(8);
    engines.add('bay', engine('engine 9'));
    expect(engines.names('bay')).toHaveLength(8);
    expect([engines.names('bay')[0], engines.names('bay').at(-1)]).toEqual(['engine 2', 'engine 9']);
    expect(engines.names('other bay')).toEqual(['of the other']);
    await engines.settled();
  });

  test('that are engines no longer are left out and told; the others stay', async () => {
    const { file, told, open } = await kept();
    await writeFile(file, JSON.stringify({ 'bay 1': [{ name: 'spoilt' }, engine('one')] }));
    const engines = await open();
    expect(engines.names('bay 1')).toEqual(['one']);
    expect(told).toEqual([
      expect.stringMatching(/^An engine that bay 1 once brought is no longer one: .*spoilt/),
    ]);
  });

  test('are none where the file is not what it should be', async () => {
    const { file, told, open } = await kept();
    await writeFile(file, JSON.stringify({ 'bay 1': 'one' }));
    expect((await open()).names('bay 1')).toEqual([]);
    expect(told).toEqual([]);
  });

  test('that cannot be kept are told, and are there all the same; the next is kept again', async () => {
    const { folder, told } = await kept();
    const gone = join(folder, 'later', 'engines.json');
    const engines = await BroughtEngines.open(gone, sentence => told.push(sentence));
    engines.add('bay', engine('one'));
    await engines.settled();
    expect(told).toEqual([
      expect.stringMatching(
        /^The engine one could not be kept \(ENOENT.*\); bring it again after a restart\.$/,
      ),
    ]);
    expect(engines.names('bay')).toEqual(['one']);
    await mkdir(join(folder, 'later'));
    engines.add('bay', engine('two'));
    await engines.settled();
    expect(JSON.parse(await readFile(gone, 'utf8'))).toMatchObject({
      bay: [{ name: 'one' }, { name: 'two' }],
    });
  });
});
