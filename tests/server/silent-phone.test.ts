import { afterEach, expect, test } from 'vitest';
import { languages } from '../../prompts/index.ts';
import { Face } from './support/face.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
afterEach(() => shop.server.close());

test("a second person's phone that died over an open line is noticed, said and shown, and believed again when it lives", async () => {
  shop = await openShop();
  const technician = await Face.paired(shop.base, await shop.pair('technician'));
  await technician.do({ do: 'begin' });
  await technician.until(() => technician.key === 'job.card.asking');
  const second = await Face.silent(shop.base, await shop.pair('second'));
  const device = () => technician.state?.devices.find(({ role }) => role === 'second');
  const gone = languages.en.lines.secondGone;
  expect(technician.says().some(({ text }) => text.includes(gone))).toBe(false);

  // By the third of the server's own questions that it leaves without an answer: they come every two seconds.
  await technician.until(() => device()?.quiet === true);
  expect(device()?.connected).toBe(true);
  await technician.until(() => technician.says().some(({ text }) => text.includes(gone)));
  expect(gone).toMatch(/Look at them\. Say hold if you cannot see them\./);

  second.revive();
  await technician.until(() => device()?.quiet === false || device()?.connected === false);
  expect(device()).toMatchObject({ connected: true, quiet: false });
  technician.close();
  second.close();
});

test("what is left in a device's battery is shown to everybody", async () => {
  shop = await openShop();
  const technician = await Face.paired(shop.base, await shop.pair('technician'));
  const second = await Face.paired(shop.base, await shop.pair('second'));
  second.send({ type: 'battery', share: 0.15, charging: false });
  await technician.until(() =>
    Boolean(technician.state?.devices.some(({ battery }) => battery?.share === 0.15)),
  );
  const weak = technician.state?.devices.filter(({ battery }) => battery?.share === 0.15);
  expect(weak).toMatchObject([{ role: 'second', battery: { share: 0.15, charging: false } }]);
  technician.close();
  second.close();
});
