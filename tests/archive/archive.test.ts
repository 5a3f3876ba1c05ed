import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Added, addFiles } from '../../src/archive/add-files.ts';
import type { Archive } from '../../src/archive/archive.ts';
import { compareStarts } from '../../src/archive/compare.ts';
import { openArchive } from '../../src/archive/open.ts';
import type { Entry } from '../../src/record/index.ts';
import { type Server, startPostgres } from './postgres.ts';
import { another, wholeSession } from './sessions.ts';

const folder = mkdtempSync(join(tmpdir(), 'archive-'));
let model: readonly Entry[];
let server: Server | undefined;
let files = 0;

beforeAll(async () => {
  model = await wholeSession(join(folder, 'model.jsonl'));
  server = startPostgres();
});
afterAll(() => {
  server?.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** A file with this text, under a name of its own. */
function fileOf(text: string | Buffer): string {
  files += 1;
  const path = join(folder, `log-${files}.jsonl`);
  writeFileSync(path, text);
  return path;
}

const textOf = (vehicle: string) => another(model, { vehicle });
const firstLines = (text: string, count: number) => `${text.split('\n').slice(0, count).join('\n')}\n`;

async function add(archive: Archive, ...paths: string[]): Promise<Added[]> {
  const added: Added[] = [];
  for await (const one of addFiles(archive, paths)) added.push(one);
  return added;
}
const kinds = (added: readonly Added[]) => added.map(({ kind }) => kind);

const databases = [
  ['SQLite', () => join(folder, `archive-${++files}.sqlite`)],
  ['PostgreSQL', () => server?.database(`archive${++files}`)],
] as const;

describe.each(databases)('an archive in %s', (_, place) => {
  const inNew =
    (work: (archive: Archive, where: string) => Promise<void>) =>
    async (context: { skip: (note?: string) => never }) => {
      const where = place();
      if (where === undefined) return context.skip('PostgreSQL is not installed');
      const archive = await openArchive(where);
      try {
        await work(archive, where);
      } finally {
        await archive.close();
      }
    };

  it(
    'has each record once, however often it is added',
    inNew(async (archive, where) => {
      const path = fileOf(textOf('Once'));
      expect(kinds(await add(archive, path, path))).toEqual(['new', 'known']);
      expect(kinds(await add(archive, fileOf(readFileSync(path))))).toEqual(['known']);
      const again = await openArchive(where);
      expect(await again.counts()).toEqual({ sessions: 1, unverified: 0 });
      await again.close();
    }),
  );

  it(
    'lets a longer version of a record take the place of a shorter one, and never the other way',
    inNew(async archive => {
      const text = textOf('Growing');
      const [short, torn, long] = [
        fileOf(firstLines(text, 100)),
        fileOf(text.slice(0, firstLines(text, 300).length + 40)),
        fileOf(text),
      ];
      expect(kinds(await add(archive, short))).toEqual(['new']);
      const { sessions } = await archive.find({}, 10);
      expect(kinds(await add(archive, torn))).toEqual(['longer']);
      expect((await archive.find({}, 10)).sessions).toMatchObject([{ state: 'torn', id: sessions[0]?.id }]);
      expect(kinds(await add(archive, short))).toEqual(['known']);
      expect(kinds(await add(archive, long, short, torn))).toEqual(['longer', 'known', 'known']);
      const found = await archive.find({}, 10);
      expect(found.sessions).toMatchObject([{ id: sessions[0]?.id, entries: model.length, state: 'sound' }]);
      expect((await archive.log(found.sessions[0]?.id ?? '')).toString()).toBe(text);
      expect((await archive.figures(found.sessions[0]?.id ?? '')).map(({ measure }) => measure)).toContain(
        'idle-speed',
      );
    }),
  );

  it(
    'sorts out versions of one record that come together',
    inNew(async archive => {
      const text = textOf('Together');
      const paths = [200, 50, model.length, 400].map(count => fileOf(firstLines(text, count)));
      expect(kinds(await add(archive, ...paths))).toEqual(['new', 'known', 'longer', 'known']);
      expect(await archive.counts()).toEqual({ sessions: 1, unverified: 0 });
    }),
  );

  it(
    'keeps and marks a record that was altered, beside the sound one, in whatever order they come',
    inNew(async archive => {
      const text = textOf('Doubtful');
      const altered = text.replace('"quantity":"chargingVoltage"', '"quantity":"chargingVoltagf"');
      const [good, bad] = [fileOf(text), fileOf(altered)];
      expect(kinds(await add(archive, bad, good, bad))).toEqual(['new', 'new', 'known']);
      expect(await archive.counts()).toEqual({ sessions: 2, unverified: 1 });
      const { sessions } = await archive.find({ unverified: true }, 10);
      expect(sessions).toMatchObject([
        { state: 'broken', vehicle: 'Doubtful', fault: expect.stringMatching(/^Line \d+ was altered/) },
      ]);
      expect((await archive.log(sessions[0]?.id ?? '')).toString()).toBe(altered);
    }),
  );

  it(
    'keeps a record even when its very first line was altered',
    inNew(async archive => {
      const altered = textOf('Headless').replace('Headless', 'Headmore');
      expect(kinds(await add(archive, fileOf(altered)))).toEqual(['new']);
      const { sessions } = await archive.find({}, 10);
      expect(sessions).toMatchObject([{ state: 'broken', entries: 0, outcome: 'unknown', vehicle: '' }]);
      expect((await archive.log(sessions[0]?.id ?? '')).toString()).toBe(altered);
    }),
  );

  it(
    'keeps both ends of a record that was continued in two places, with a remark',
    inNew(async archive => {
      const begin = model.slice(0, 100);
      const [one, other] = [7, 8].map(seconds =>
        another(
          [...begin, ...model.slice(100, 300).map(entry => ({ ...entry, monoMs: entry.monoMs + seconds }))],
          {},
        ),
      );
      const [first, second] = await add(archive, fileOf(one ?? ''), fileOf(other ?? ''));
      expect([first?.kind, second?.kind]).toEqual(['new', 'new']);
      const { sessions } = await archive.find({}, 10);
      expect(sessions.map(({ remark }) => remark).sort()).toEqual([
        '',
        expect.stringMatching(/continued in two places/),
      ]);
      expect(kinds(await add(archive, fileOf(one ?? ''), fileOf(other ?? '')))).toEqual(['known', 'known']);
    }),
  );

  it(
    'finds by vehicle, person, engine, day, outcome and text, without regard to case and accents',
    inNew(async archive => {
      const folderOfLogs = join(folder, `shop-${++files}`);
      mkdirSync(folderOfLogs);
      const write = (name: string, text: string) => writeFileSync(join(folderOfLogs, name), text);
      write('a.jsonl', another(model, { vehicle: 'Крокодил 100%', technician: 'José Ångström' }));
      write('b.jsonl', another(model, { vehicle: 'Mixer_2', daysLater: 1 }));
      write('c.jsonl', firstLines(another(model, { vehicle: 'Mixer 3\u0000', daysLater: 2 }), 200));
      write('d.txt', 'no record, and not looked at');
      expect(kinds(await add(archive, folderOfLogs))).toEqual(['new', 'new', 'new']);
      const found = async (filter: Parameters<Archive['find']>[0]) =>
        (await archive.find(filter, 10)).sessions.map(({ vehicle }) => vehicle.replace('\uFFFD', ''));
      expect(await found({})).toEqual(['Mixer 3', 'Mixer_2', 'Крокодил 100%']);
      expect(await found({ vehicle: 'КРОКО' })).toEqual(['Крокодил 100%']);
      expect(await found({ vehicle: '0%' })).toEqual(['Крокодил 100%']);
      expect(await found({ vehicle: 'r_' })).toEqual(['Mixer_2']);
      expect(await found({ person: 'jose angstrom' })).toEqual(['Крокодил 100%']);
      expect(await found({ person: 'ZOE' })).toEqual(['Mixer 3', 'Mixer_2']);
      expect(await found({ engine: 'demo six', vehicle: 'mixer' })).toEqual(['Mixer 3', 'Mixer_2']);
      expect(await found({ from: '2026-01-03', to: '2026-01-03' })).toEqual(['Mixer_2']);
      expect(await found({ outcome: 'broke-off' })).toEqual(['Mixer 3']);
      expect(await found({ outcome: 'signed-off', text: 'rebuilt' })).toEqual(['Mixer_2', 'Крокодил 100%']);
      expect(await found({ text: "'; DROP TABLE first_fire_sessions; --" })).toEqual([]);
      expect((await archive.find({}, 2)).more).toBe(true);
    }),
  );

  it(
    'compares the last starts and marks the one that is far off',
    inNew(async archive => {
      const seconds = [2.1, 2.4, 2.2, 2.3, 2.6, 2.4, 9.5, 2.5];
      const paths = seconds.map((oilPressureSeconds, daysLater) =>
        fileOf(another(model, { vehicle: `Truck ${daysLater}`, daysLater, oilPressureSeconds })),
      );
      const altered = another(model, { vehicle: 'Forged', daysLater: 20, oilPressureSeconds: 0.1 });
      await add(archive, ...paths, fileOf(`${altered}not a line\n`));
      const starts = await archive.measured('oil-pressure-time', {}, 7);
      expect(starts.map(({ value }) => value)).toEqual(seconds.slice(1));
      const { starts: compared, median } = compareStarts('oil-pressure-time', starts);
      expect(median).toBe(2.4);
      expect(compared.filter(({ outlier }) => outlier).map(({ session }) => session.vehicle)).toEqual([
        'Truck 6',
      ]);
    }),
  );

  it(
    'refuses with one sentence what is no record at all, and an id that is none or is not unique',
    inNew(async archive => {
      const added = await add(
        archive,
        fileOf('{"some":"json"}\n'),
        fileOf(''),
        join(folder, 'nothing.jsonl'),
        '/dev/null',
      );
      expect(kinds(added)).toEqual(['refused', 'refused', 'refused', 'refused']);
      await expect(archive.session('xyz')).rejects.toThrow(/is no id/);
      await expect(archive.session('abcdef')).rejects.toThrow(/No session/);
    }),
  );

  it(
    'adds all records of a batch or none',
    inNew(async archive => {
      await add(archive, fileOf(textOf('Before')));
      const [again] = await add(archive, fileOf(textOf('Before')));
      if (again === undefined || again.kind === 'refused') throw new Error('nothing was taken in');
      const good = again.intake;
      const other = { ...good, digest: 'a'.repeat(64), chain: 'b'.repeat(64), head: 'c'.repeat(64) };
      const [figure] = good.card.measured;
      if (!figure) throw new Error('nothing was measured');
      const impossible = {
        ...other,
        chain: 'd'.repeat(64),
        card: { ...good.card, measured: [figure, figure] },
      };
      await expect(archive.add([other, impossible], new Date())).rejects.toThrow();
      expect(await archive.counts()).toEqual({ sessions: 1, unverified: 0 });
      expect(await archive.add([other], new Date())).toMatchObject([{ kind: 'new' }]);
    }),
  );
});
