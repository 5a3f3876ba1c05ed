import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { languages } from '../../prompts/index.ts';
import type { Role } from '../../src/server/protocol/index.ts';
import { Face } from './support/face.ts';
import { openShop, type TestShop } from './support/shop.ts';
import { leadUntil, linesOf } from './support/whole-start.ts';

/**
 * A page that pings by itself, as all do, until it freezes: then its browser still answers for its line, and nothing of the
 * page itself comes any more.
 */
async function page(shop: TestShop, role: Role) {
  const face = await Face.paired(shop.base, await shop.pair(role));
  const speak = () => face.send({ type: 'ping', sentMs: 1, found: { offsetMs: 0, roundTripMs: 1 } });
  let pinging: NodeJS.Timeout | undefined;
  const live = () => {
    speak();
    pinging = setInterval(speak, 1_000);
  };
  const freeze = () => clearInterval(pinging);
  live();
  return { face, live, freeze };
}

let shop: TestShop;
let supervisor: Awaited<ReturnType<typeof page>>;
beforeEach(async () => {
  shop = await openShop({ awayMs: 100 });
  supervisor = await page(shop, 'supervisor');
});
afterEach(async () => {
  supervisor.freeze();
  await shop.server.close();
});

const device = (role: Role) => supervisor.face.state?.devices.find(each => each.role === role);

describe('A page that hangs or sleeps', () => {
  test('and leads is one that has left: beside an engine that turns the session is stopped, and it is heard when it speaks again', async () => {
    const lead = await page(shop, 'technician');
    await lead.face.do({ do: 'begin' });
    await leadUntil('warmUp.watch.asking', lead.face, shop.clock(), await linesOf('demo-six'));
    expect(device('technician')).toMatchObject({ connected: true, quiet: false });
    expect(supervisor.face.state?.view?.engine).toBe('running');
    lead.freeze();
    await supervisor.face.until(() => device('technician')?.quiet === true);
    await supervisor.face.until(() => supervisor.face.state?.view?.state === 'stopped');
    expect(device('technician')?.connected).toBe(true);
    expect(supervisor.face.state?.view?.problems.join()).toContain('The device that leads is away');
    lead.live();
    await supervisor.face.until(() => device('technician')?.quiet === false);
    lead.freeze();
  });

  test("and is the second person's is told of, whatever its browser answers; one that pings is not", async () => {
    const lead = await page(shop, 'technician');
    const second = await page(shop, 'second');
    await lead.face.do({ do: 'begin' });
    await lead.face.until(() => lead.face.key === 'job.card.asking');
    second.freeze();
    await lead.face.until(() =>
      lead.face.says().some(({ text }) => text.includes(languages.en.lines.secondGone)),
    );
    expect(device('second')).toMatchObject({ connected: true, quiet: true });
    expect(device('technician')?.quiet).toBe(false);
    expect(device('supervisor')?.quiet).toBe(false);
    // A stop of it is taken as ever.
    expect(await second.face.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'stopped' });
    await lead.face.until(() => device('second')?.quiet === false);
    lead.freeze();
  });
});
