import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it, onTestFinished } from 'vitest';
import { type Answers, nextQuestion, withAnswer } from '../../../src/interview/interview.ts';
import { neverAssumed } from '../../../src/profile/provenance.ts';
import { openShop } from '../../server/support/shop.ts';
import { pairAs } from '../helpers/bay.ts';
import { openBrowser } from '../helpers/browser.ts';
import { openPage, touchOnly } from '../helpers/page.ts';
import { pageFolder, type Served, servePage } from '../helpers/serve.ts';

let browser: Browser;
let served: Served;
beforeAll(async () => {
  served = await servePage();
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

/** What is answered to what, by a part of the question; the rest is taken as it is put forward. */
const answers: readonly (readonly [asked: RegExp, answer: string])[] = [
  [/real engine/, 'no'],
  [/Name of the profile/, 'Tablet four'],
  [/Cylinders/, '4'],
  [/Displacement/, '3.9'],
  [/Rated speed/, '2400'],
  [/What it drives/, 'a vehicle: truck, bus, tractor'],
  [/A turbocharger/, 'no'],
  [/Fuelling, and so how/, 'mechanical: a lever is put to no delivery'],
  [/What shuts it off when the key does not/, 'air flap at the intake'],
  [/has to be shut off/, '2700'],
  [/Least oil pressure at idle/, '1'],
  [/Least oil pressure at rated speed/, '3'],
  [/Oil with a new filter/, '9.5'],
  [/Oil filter/, 'fitted dry'],
  [/Coolant in the whole system/, '11'],
  [/Fuel tank/, '70'],
  [/Fuel filters one behind/, 'one'],
  [/Heater for cold starts/, 'none'],
];

const heading = (page: Page) => page.locator('#asked').textContent();

/** Answers one question: by its control where it has one, else in words, else as it is put forward. */
async function answerOne(page: Page): Promise<void> {
  const asked = (await heading(page)) ?? '';
  const given = answers.find(([about]) => about.test(asked))?.[1];
  const control = page.getByRole('button', { name: given ?? '', exact: true });
  const write = page.getByLabel('Answer', { exact: true });
  if (given !== undefined && (await control.count()) > 0) await control.click();
  else if (given !== undefined && (await write.count()) > 0) {
    await write.fill(given);
    await page.getByRole('button', { name: 'Next', exact: true }).click();
  } else await page.getByRole('button', { name: /^Take as put forward/ }).click({ timeout: 5000 });
  await page.waitForFunction(before => document.querySelector('#asked')?.textContent !== before, asked);
}

it('describes a new engine on the device, in one go or two, and leads a start of it', async () => {
  const { page, faults } = await openPage(browser, served.origin, { settings: touchOnly });
  await page.getByRole('button', { name: 'Describe a new engine' }).click();
  for (let count = 0; count < 6; count += 1) await answerOne(page);
  // What is wrong is said in a sentence, and asked again.
  const before = await heading(page);
  expect(before).toContain('Rated speed');
  // What was understood stands there; taken back, it is put forward again.
  await page.getByText('Displacement: 3.9 L [plate]').waitFor();
  await page.getByRole('button', { name: 'Back to the question before' }).click();
  await page.getByRole('button', { name: 'Take as put forward: 3.9 L, plate' }).click();
  await page.waitForFunction(asked => document.querySelector('#asked')?.textContent === asked, before);
  await page.getByLabel('Answer', { exact: true }).fill('fast');
  await page.getByRole('button', { name: 'Next', exact: true }).click();
  await page.getByText('"fast" is no number').waitFor();
  await page.getByRole('button', { name: /^Leave/ }).click();
  // Left, and gone on with after the page was loaded anew.
  await page.reload();
  await page.getByRole('button', { name: 'Describe a new engine' }).click();
  expect(await heading(page)).toBe(before);
  for (let count = 0; count < 70 && (await page.locator('#made').count()) === 0; count += 1)
    await answerOne(page);
  await page.getByText(/of its values are only assumed/).waitFor();
  await page.getByRole('button', { name: 'Keep this engine on this device' }).click();
  await page.reload();
  const engine = page.getByRole('radio', { name: 'Tablet four' });
  expect(await engine.isChecked()).toBe(true);
  await page.getByRole('button', { name: 'Begin here' }).click();
  await page.locator('[data-key="job.card.asking"]').first().waitFor();
  expect(faults).toEqual([]);
});

/** All answers about a real engine: read where nothing else will do, else as put forward, and so assumed. */
function realEngine(name: string): Answers {
  const chosen = {
    real: true,
    name,
    use: 'vehicle',
    turbo: true,
    'fuelling.disabledBy': 'lever',
    'oil.filter': 'dry',
  };
  const read = {
    ...chosen,
    filterCount: '1',
    heaterKind: 'none',
    'engine.cylinders': 4,
    'engine.displacementL': 3.9,
  };
  const given: Readonly<Record<string, boolean | string | number>> = {
    ...read,
    ...{ ratedRpm: 2400, 'oil.capacityL': 9.5, 'coolant.systemVolumeL': 11, 'fuel.tankL': 70 },
  };
  let answers: Answers = {};
  for (let next = nextQuestion(answers); next; next = nextQuestion(answers)) {
    const { question, proposal } = next;
    const value = given[question.id] ?? proposal?.value;
    if (value === undefined) throw new Error(`Nobody answers ${question.id}.`);
    const isRead =
      question.id in given || question.fields.some(field => neverAssumed.some(each => each === field));
    const origin = isRead || !proposal ? { from: 'manual' as const } : proposal.origin;
    answers = withAnswer(answers, question.id, { value, origin });
  }
  return answers;
}

const remember = (page: Page, name: string) =>
  page.addInitScript(
    kept => {
      if (localStorage.getItem('first-fire-interview') === null)
        localStorage.setItem('first-fire-interview', kept);
    },
    JSON.stringify({ schema: 'first-fire-interview/1', answers: realEngine(name) }),
  );

/** What is only assumed of it, as the supervisor's controls name it. */
const toAccept = [/the limits of the starter/, /the coolant/, /the idle/];

const people = [
  ['Technician', 'T. Nichan'],
  ['Second person', 'S. Cond'],
  ['Supervisor', 'S. Visor'],
] as const;

it('begins a real engine only when the supervisor has accepted by name what is assumed of it', async () => {
  const { page, faults } = await openPage(browser, served.origin, {
    settings: touchOnly,
    before: each => remember(each, 'Yard tractor'),
  });
  await page.getByRole('button', { name: 'Describe a new engine' }).click();
  await page.getByRole('button', { name: 'Keep this engine on this device' }).click();
  await page.getByRole('button', { name: 'Begin here' }).click();
  await page
    .getByRole('alert')
    .getByText('may stay assumed only where the supervisor accepts it by name')
    .waitFor();
  for (const what of toAccept) {
    const accept = page.getByRole('button', { name: what });
    // Nobody's name accepts nothing.
    await page.getByLabel('Supervisor, by name').fill(' ');
    expect(await accept.isDisabled()).toBe(true);
    await page.getByLabel('Supervisor, by name').fill('S. Visor');
    await accept.click();
    await accept.waitFor({ state: 'detached' });
  }
  // Nor do invented people start it.
  await page.getByRole('button', { name: 'Begin here' }).click();
  await page.getByRole('alert').getByText('"Ada Example (invented)" is invented').waitFor();
  for (const [role, name] of people) await page.getByLabel(role, { exact: true }).fill(name);
  await page.getByRole('button', { name: 'Begin here' }).click();
  await page.locator('[data-key="job.card.asking"]').first().waitFor();
  expect(faults).toEqual([]);
});

it('takes an engine from the supervisor to the laptop once all is accepted that is assumed', async () => {
  const shop = await openShop({ page: pageFolder });
  onTestFinished(() => shop.server.close());
  const context = await browser.newContext({ ignoreHTTPSErrors: true, serviceWorkers: 'block' });
  const page = await context.newPage();
  await remember(page, 'Yard loader');
  await page.addInitScript(
    value => localStorage.setItem('first-fire-settings', value),
    JSON.stringify(touchOnly),
  );
  await page.goto(`https://localhost:${shop.server.port}/`);
  await page.getByRole('button', { name: 'Describe a new engine' }).click();
  await page.getByRole('button', { name: 'Keep this engine on this device' }).click();
  await pairAs(page, shop, 'supervisor');
  const bring = page.getByRole('button', { name: 'Give the laptop the engine Yard loader' });
  expect(await bring.isDisabled()).toBe(true);
  await page.getByLabel('Supervisor, by name').fill('S. Visor');
  for (const what of toAccept) await page.getByRole('button', { name: what }).click();
  await bring.click();
  await page.getByText('The laptop keeps Yard loader.').waitFor();
  await context.close();
});

it('is held in the language of the page, and says there what is wrong', async () => {
  const { page, faults } = await openPage(browser, served.origin, {
    settings: { ...touchOnly, language: 'fr' },
  });
  await page.getByRole('button', { name: 'Décrire un nouveau moteur' }).click();
  expect(await heading(page)).toContain('Unités du manuel');
  await page.getByText('Pourquoi : un nombre sans unité').waitFor();
  await page
    .getByRole('button', { name: /^métrique : L/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'non', exact: true }).click();
  await page.getByLabel('Réponse', { exact: true }).fill('Stop');
  await page.getByRole('button', { name: 'Suivant', exact: true }).click();
  await page.getByRole('alert').getByText('appelez-le autrement').waitFor();
  expect(await page.locator('main').textContent()).not.toMatch(/Why|Where|assumed|metric:/);
  expect(faults).toEqual([]);
});
