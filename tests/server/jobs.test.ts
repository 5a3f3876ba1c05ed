import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { languages } from '../../prompts/index.ts';
import { openArchive } from '../../src/archive/open.ts';
import type { SessionRow } from '../../src/server/protocol/index.ts';
import { Face } from './support/face.ts';
import { get } from './support/https.ts';
import { openShop, type TestShop } from './support/shop.ts';
import { leadToTheEnd, linesOf } from './support/whole-start.ts';

const JOBS = 5;

let shop: TestShop;
let technician: Face;
beforeAll(async () => {
  shop = await openShop({ bays: ['bay 1', 'bay 2'] });
  technician = await Face.paired(shop.base, await shop.pair('technician'));
});
afterAll(() => shop.server.close());

const soon = (check: () => void | Promise<void>) => vi.waitFor(check, { timeout: 60_000, interval: 50 });
const cardOf = (nth: number) => ({
  vehicle: `Invented truck ${nth}`,
  engine: `Invented engine ${nth}`,
  technician: 'Ada Example',
  second: 'Ben Example',
  supervisor: 'Cleo Example',
});
const recordOf = (session: string | null | undefined) =>
  readFileSync(join(shop.folder, `${session}.jsonl`), 'utf8')
    .trim()
    .split('\n')
    .map(line => JSON.parse(line));

/** What the record says that it ended with; its last words may stand behind that. */
const outcomeOf = (session: string) => recordOf(session).find(({ kind }) => kind === 'closed')?.data.outcome;

describe('Job after job on one server', () => {
  test(`${JOBS} in a row are signed off without a restart, each in a record of its own with its own job card`, async () => {
    const lines = await linesOf('demo-six');
    const sessions: string[] = [];
    for (let nth = 1; nth <= JOBS; nth += 1) {
      expect(await technician.do({ do: 'begin', job: cardOf(nth) })).toMatchObject({ type: 'ack' });
      sessions.push(technician.state?.session ?? '');
      await leadToTheEnd(technician, shop.clock(), lines);
      expect(technician.state?.view?.outcome).toBe('signedOff');
    }
    expect(new Set(sessions).size).toBe(JOBS);
    for (const [index, session] of sessions.entries()) {
      const entries = recordOf(session);
      expect(entries[0].data.job).toEqual(cardOf(index + 1));
      await soon(() => expect(outcomeOf(session)).toBe('signedOff'));
    }
    expect(readdirSync(shop.folder).filter(name => name.endsWith('.jsonl'))).toHaveLength(JOBS);
    // Nobody has listed anything yet: a record reaches the archive when it is closed.
    await soon(async () => {
      const archive = await openArchive(join(shop.folder, 'first-fire-archive.sqlite'));
      const { sessions: archived } = await archive.find({}, 100).finally(() => archive.close());
      expect(archived.filter(({ outcome }) => outcome === 'signed-off')).toHaveLength(JOBS);
    });
  });
});

describe('What is chosen on the tablet', () => {
  test('is honoured: engine, job card, units and language', async () => {
    const job = cardOf(99);
    await technician.do({ do: 'begin', job, units: 'metric', language: 'fr' });
    await technician.until(() => technician.state?.language === 'fr' && technician.key === 'job.card.asking');
    const [opened] = recordOf(technician.state?.session);
    expect(opened.data).toMatchObject({
      job,
      units: 'metric',
      language: 'fr',
      profile: { name: expect.stringMatching(/^Demo six/) },
    });
    expect(technician.state?.view?.prompt).toMatch(/[éèàç]|fiche/);
    // Its stop is that of its language.
    const [own = ''] = languages.fr.stopWordings.filter(word => !languages.en.stopWordings.includes(word));
    expect(own).not.toBe('');
    expect(await technician.say(own)).toMatchObject({ stop: 'stopped' });
  });

  test('is refused in one sentence where the job card is not whole, and nothing begins', async () => {
    const other = await Face.paired(shop.base, await shop.pair('technician', 'bay 2'));
    const { vehicle: _, ...withoutVehicle } = cardOf(1);
    expect(await other.do({ do: 'begin', job: withoutVehicle })).toMatchObject({
      code: 'notNow',
      sentence: expect.stringContaining('vehicle'),
    });
    expect(other.state?.session).toBeNull();
    other.close();
  });
});

describe('A session', () => {
  test('is set aside only where everything is said to be off, gone on with later, and ended without a signature', async () => {
    const session = technician.state?.session ?? '';
    await technician.until(() => technician.state?.view?.state === 'stopped');
    expect(technician.state?.mayBeLeft).toBe(false);
    expect(await technician.do({ do: 'setAside' })).toMatchObject({ code: 'notNow' });
    await technician.say(technician.state?.view?.choices[0] ?? '');
    await technician.until(() => technician.state?.mayBeLeft === true);
    expect(await technician.do({ do: 'begin' })).toMatchObject({ code: 'notNow' });
    expect(await technician.do({ do: 'setAside' })).toMatchObject({ type: 'ack' });
    await technician.until(() => technician.state?.session === null);
    expect(technician.state?.view).toBeNull();

    await technician.do({ do: 'begin' });
    await technician.until(() => technician.key === 'job.card.asking');
    const between = technician.state?.session;
    expect(between).not.toBe(session);
    expect(await technician.do({ do: 'resume', session })).toMatchObject({ code: 'notNow' });
    await endIt(technician);

    expect(await technician.do({ do: 'resume', session })).toMatchObject({ type: 'ack' });
    await technician.until(() => technician.state?.session === session);
    // It was stopped as a tool that was restarted is: nobody goes on unheard.
    expect(technician.state?.view?.state).toBe('stopped');
    expect(technician.state?.language).toBe('fr');
    await endIt(technician);
    await soon(() => expect(outcomeOf(session)).toBe('ended'));
    expect(await technician.do({ do: 'resume', session })).toMatchObject({ code: 'notNow' });
  });

  test('of another bay, or of no bay, is not gone on with here', async () => {
    const other = await Face.paired(shop.base, await shop.pair('technician', 'bay 2'));
    const own = readdirSync(shop.folder).find(name => name.endsWith('bay-1.jsonl')) ?? '';
    await other.do({ do: 'takeOver' });
    for (const session of [own.replace('.jsonl', ''), 'no-such', '../.server/bays', '.server/pairings'])
      expect(await other.do({ do: 'resume', session })).toMatchObject({ code: 'notFound' });
    other.close();
  });

  test('that is set aside stays so when the server is started anew', async () => {
    const before = await openShop({ bays: ['bay 9'] });
    const face = await Face.paired(before.base, await before.pair('technician', 'bay 9'));
    await face.do({ do: 'begin' });
    await face.until(() => face.key === 'job.card.asking');
    const session = face.state?.session ?? '';
    await face.do({ do: 'stop' });
    await face.until(() => face.state?.view?.state === 'stopped');
    await face.say(face.state?.view?.choices[0] ?? '');
    await face.until(() => face.state?.mayBeLeft === true);
    await face.do({ do: 'setAside' });
    await before.server.close();
    const after = await openShop({ folder: before.folder, bays: ['bay 9'] });
    const again = await Face.paired(after.base, await after.pair('technician', 'bay 9'));
    expect(again.state?.session).toBeNull();
    const token = await after.pair('supervisor', 'bay 9');
    await soon(async () => {
      const rows: SessionRow[] = JSON.parse((await get(after.base, '/api/sessions', token)).body).sessions;
      expect(rows.find(({ id }) => id === session)?.state).toBe('brokenOff');
    });
    await after.server.close();
  });
});

/** Stops it, says that all is off, and ends it. */
async function endIt(face: Face): Promise<void> {
  const over = () => face.state?.view?.outcome !== null;
  await face.do({ do: 'stop' });
  await face.until(() => face.state?.view?.state === 'stopped');
  for (let step = 0; step < 12 && !over(); step += 1) {
    const { choices = [] } = face.state?.view ?? {};
    const end = choices.find(choice => /^(end (the )?session|terminer|fin de)/i.test(choice));
    await face.say(end ?? choices[0] ?? '');
    await face.settled();
  }
  await face.until(over);
}
