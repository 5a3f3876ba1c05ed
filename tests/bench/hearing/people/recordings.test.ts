import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { peopleFolders } from '../../../../bench/hearing/people/folders.ts';
import { clipsIn, RecordingsError } from '../../../../bench/hearing/people/recordings.ts';

const head = 'pack\tstartSample\tlengthSamples\tkind\ttext\tspeaker\tsplit\tsource\tlicence';
const line = 'a-1.opus\t1600\t8000\tspeech\tforty two\tann\ttest\tsomewhere\tCC0';

describe('a folder of recordings', () => {
  let folder = '';
  const write = (...lines: readonly string[]) =>
    writeFileSync(join(folder, 'index.tsv'), `${lines.join('\n')}\n`);
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'first-fire-people-'));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  it('is listed by its index, its packs beside it or in a folder of their own', () => {
    mkdirSync(join(folder, 'packs'));
    writeFileSync(join(folder, 'packs', 'a-1.opus'), '');
    writeFileSync(join(folder, 'b-1.opus'), '');
    write(head, line, line.replace('a-1', 'b-1'));
    const clips = clipsIn(folder);
    expect(clips.map(({ pack }) => pack)).toEqual([
      join(folder, 'packs', 'a-1.opus'),
      join(folder, 'b-1.opus'),
    ]);
    expect(clips[0]).toMatchObject({
      startSample: 1600,
      lengthSamples: 8000,
      text: 'forty two',
      speaker: 'ann',
    });
  });

  it.each([
    ['no index', () => {}, /no index\.tsv/],
    ['a pack that is not there', () => write(head, line), /line 2: there is no a-1\.opus/],
    ['a place that is no number', () => write(head, line.replace('1600', 'soon')), /line 2: .*startSample/],
    ['a split that there is not', () => write(head, line.replace('test', 'best')), /line 2: .*split/],
    ['a pack outside of it', () => write(head, line.replace('a-1.opus', '../a.opus')), /line 2: .*pack/],
  ])('with %s is refused, and it is said why', (_, prepare, why) => {
    prepare();
    expect(() => clipsIn(folder)).toThrow(RecordingsError);
    expect(() => clipsIn(folder)).toThrow(why);
  });
});

describe('folders of people', () => {
  it('are named after their flag, up to the next one', () => {
    expect(peopleFolders(['stops', '--people', 'a', 'b', '--quick'])).toEqual({
      folders: ['a', 'b'],
      rest: ['stops', '--quick'],
    });
  });
});
