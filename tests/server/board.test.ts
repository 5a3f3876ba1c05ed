import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { BayBrief } from '../../src/server/protocol/index.ts';
import { Face } from './support/face.ts';
import { post } from './support/https.ts';
import { openShop, type TestShop } from './support/shop.ts';
import { leadUntil, linesOf } from './support/whole-start.ts';

let shop: TestShop;
let technician: Face;
let supervisor: Face;
let technicianToken: string;

beforeAll(async () => {
  shop = await openShop({ bays: ['bay 1', 'bay 2'] });
  technicianToken = await shop.pair('technician', 'bay 1');
  technician = await Face.paired(shop.base, technicianToken);
  supervisor = await Face.paired(shop.base, await shop.pair('supervisor', 'bay 2'));
});
afterAll(() => shop.server.close());

const board = (): readonly BayBrief[] => {
  const news = supervisor.messages.findLast(one => one.type === 'board');
  return news?.type === 'board' ? news.bays : [];
};
const bay1 = () => board().find(({ bay }) => bay === 'bay 1');

describe('The board', () => {
  test('comes to supervisors only, and tells of all bays', async () => {
    await supervisor.until(() => board().length === 2);
    expect(board()).toMatchObject([
      { bay: 'bay 1', state: 'free', session: null },
      { bay: 'bay 2', state: 'free', away: [] },
    ]);
    await technician.do({ do: 'begin' });
    await supervisor.until(() => bay1()?.state === 'working' && bay1()?.waitsFor?.role === 'technician');
    expect(bay1()).toMatchObject({
      vehicle: 'Invented truck seven',
      profile: expect.stringMatching(/^Demo six/),
      phaseNumber: 1,
      engine: 'off',
      waitsFor: { name: 'Ada Example' },
    });
    const second = await Face.paired(shop.base, await shop.pair('second', 'bay 1'));
    await second.settled();
    for (const face of [technician, second])
      expect(face.messages.filter(({ type }) => type === 'board')).toEqual([]);
    second.close();
    await supervisor.until(() => bay1()?.away.some(({ role }) => role === 'second') === true);
  });

  test('tells a stop from a stop word that is tried out', async () => {
    await leadUntil('job.stopTechnician.asking', technician, shop.clock(), await linesOf('demo-six'));
    await technician.do({ do: 'stop' });
    await supervisor.until(() => bay1()?.state === 'drill');
    shop.clock().advance(1000);
    // A second person with a device of their own has their word heard from there.
    const second = await Face.paired(shop.base, await shop.pair('second', 'bay 1'));
    await second.do({ do: 'stop' });
    await technician.until(() => technician.key === 'stopped.drill');
    second.close();
    expect(bay1()?.state).toBe('drill');
    await technician.say('that was the drill');
    await supervisor.until(() => bay1()?.state === 'working');
    await technician.until(() => technician.key.startsWith('fill.coolantMix'));
    expect(technician.state?.view?.state).toBe('working');
  });

  test('goes on to whoever comes later, and ends with the pairing', async () => {
    const token = await shop.pair('supervisor', 'bay 1');
    const later = await Face.paired(shop.base, token);
    await later.until(() => later.messages.some(({ type }) => type === 'board'));
    const own = later.state?.devices.find(({ role }) => role === 'supervisor')?.id ?? '';
    await shop.server.letGo(own);
    await later.until(() => later.closeCode !== null);
    const count = later.messages.filter(({ type }) => type === 'board').length;
    await technician.do({ do: 'stop' });
    await supervisor.until(() => ['drill', 'stopped'].includes(bay1()?.state ?? ''));
    expect(later.messages.filter(({ type }) => type === 'board')).toHaveLength(count);
  });
});

describe('An engine', () => {
  const bring = (profile: unknown, token = technicianToken) =>
    post(`${shop.base}/api/profiles`, profile, { authorization: `Bearer ${token}` });
  const errorOf = ({ body }: { body: string }) => JSON.parse(body).error.code;

  test("that a tablet brings is its own bay's, and never takes the name of another", async () => {
    const path = join(import.meta.dirname, '../../src/profile/demo/demo-four.json');
    const four = JSON.parse(await readFile(path, 'utf8'));
    const own = { ...four, name: 'Shop four' };
    expect(JSON.parse((await bring(own)).body)).toEqual({ name: 'Shop four' });
    await technician.until(() => technician.state?.profiles.includes('Shop four') === true);
    expect(supervisor.state?.profiles).toEqual(['demo-six']);

    const other = await Face.paired(shop.base, await shop.pair('technician', 'bay 2'));
    expect(await other.do({ do: 'begin', profile: 'Shop four' })).toMatchObject({ code: 'notFound' });
    const six = JSON.parse(await readFile(path.replace('four', 'six'), 'utf8'));
    for (const name of ['demo-six', six.name]) expect(errorOf(await bring({ ...four, name }))).toBe('notNow');
    expect(JSON.parse((await bring(six)).body)).toEqual({ name: 'demo-six' });
    other.close();
  });

  test('that a supervisor brings is for all bays, and a restart of the laptop has it', async () => {
    const path = join(import.meta.dirname, '../../src/profile/demo/demo-four.json');
    const pump = { ...JSON.parse(await readFile(path, 'utf8')), name: 'Shop pump' };
    const token = await shop.pair('supervisor', 'bay 1');
    expect(JSON.parse((await bring(pump, token)).body)).toEqual({ name: 'Shop pump' });
    for (const bay of ['bay 1', 'bay 2']) {
      const face = await Face.paired(shop.base, await shop.pair('technician', bay));
      await face.until(() => face.state?.profiles.includes('Shop pump') === true);
      face.close();
    }
    await shop.server.close();
    shop = await openShop({ folder: shop.folder, bays: ['bay 1', 'bay 2'] });
    const face = await Face.paired(shop.base, await shop.pair('technician', 'bay 2'));
    await face.until(() => face.state?.profiles.includes('Shop pump') === true);
    face.close();
  });

  test('that is wrong, too large, or from whoever may bring none is refused in one sentence', async () => {
    expect(errorOf(await bring({ name: 7 }))).toBe('malformed');
    expect(errorOf(await bring([]))).toBe('malformed');
    expect(errorOf(await bring({ filler: 'x'.repeat(70_000) }))).toBe('tooLong');
    expect(errorOf(await bring({}, 'guess'))).toBe('notPaired');
    expect(errorOf(await bring({}, await shop.pair('second', 'bay 1')))).toBe('notYourRole');
  });
});
