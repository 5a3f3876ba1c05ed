import { join } from 'node:path';
import type { Browser, Page, WebSocketRoute } from 'playwright-core';
import type { LanguageCode } from '../../../prompts/types.ts';
import { type BayState, PROTOCOL_VERSION, type Role, roles } from '../../../src/server/protocol/index.ts';
import { demoJob } from '../../../src/session/demo-job.ts';
import type { View } from '../../../src/session/view.ts';
import { PATIENCE_MS, touchOnly } from './page.ts';

export const sizes = [
  [1280, 800],
  [800, 1280],
  [390, 844],
  [320, 568],
] as const;

const EPOCH = 'the-walk';
const devices: BayState['devices'] = roles.map(role => ({
  id: role,
  role,
  name: `${role}'s`,
  connected: true,
  quiet: false,
  battery: { share: 0.5, charging: false },
  lastWordMs: null,
  owner: role === 'technician',
  listens: false,
  clockOffsetMs: null,
  roundTripMs: null,
}));

const bayState = (view: View | null, turn: string, language: LanguageCode): BayState => ({
  bay: 'bay 1',
  session: view ? 'walk' : null,
  view,
  profiles: [],
  usual: { job: demoJob, units: 'us', language: 'en' },
  language,
  mayBeLeft: false,
  turn,
  grammar: null,
  firing: null,
  devices,
  clear: {
    state: view?.key.endsWith('.askingClear') ? 'needed' : 'notAsked',
    untilSessionMs: null,
    ownDeviceOnly: true,
  },
  holdAsked: null,
  lost: null,
});

const frameName = (role: Role, [width, height]: (typeof sizes)[number]) => `${role} ${width}x${height}`;
const names = roles.flatMap(role => sizes.map(size => frameName(role, size)));

/** One document that holds the page once for each role and size: all take each state at once, and are measured at once. */
const documentOfFrames = `<!doctype html><title>walk</title><body style="margin:0">${roles
  .flatMap(role =>
    sizes.map(
      size =>
        `<iframe name="${frameName(role, size)}" width="${size[0]}" height="${size[1]}" style="border:0" src="/"></iframe>`,
    ),
  )
  .join('')}`;

export interface Walk {
  readonly page: Page;
  /** Shows this view on all faces, and gives back what of it is not in sight, one line each. */
  show(view: View): Promise<readonly string[]>;
  /** A picture of each face as it is now, in this theme, into a folder. */
  keepPictures(folder: string, name: string, theme: 'light' | 'dark'): Promise<void>;
  close(): Promise<void>;
}

/** Opens the built page for all roles and sizes, joined to a bay that shows what it is told. */
export async function openWalk(
  browser: Browser,
  origin: string,
  language: LanguageCode,
  joinButton: string,
): Promise<Walk> {
  const context = await browser.newContext({
    serviceWorkers: 'block',
    viewport: { width: 200, height: 200 },
  });
  context.setDefaultTimeout(PATIENCE_MS);
  await context.addInitScript(
    ({ settings, version }) => {
      const pairing = {
        v: version,
        token: window.name.split(' ')[0],
        role: window.name.split(' ')[0],
        bay: 'bay 1',
        expiresAtMs: 1e13,
      };
      const kept: Readonly<Record<string, string>> = {
        'first-fire-settings': settings,
        'first-fire-pairing': JSON.stringify(pairing),
      };
      const { getItem } = Storage.prototype;
      Storage.prototype.getItem = function get(key) {
        return kept[key] ?? getItem.call(this, key);
      };
    },
    { settings: JSON.stringify({ ...touchOnly, language }), version: PROTOCOL_VERSION },
  );
  const page = await context.newPage();
  const lines = new Set<WebSocketRoute>();
  let seq = 0;
  let state = bayState(null, '', language);
  await page.routeWebSocket(/\/ws$/, line => {
    line.onClose(() => lines.delete(line));
    line.onMessage(text => {
      const message = JSON.parse(String(text));
      if (message.type === 'ping')
        line.send(
          JSON.stringify({ type: 'pong', sentMs: message.sentMs, serverMs: message.sentMs, sessionMs: 0 }),
        );
      if (message.type !== 'hello') return;
      const role: Role = message.token;
      line.send(
        JSON.stringify({
          type: 'welcome',
          v: PROTOCOL_VERSION,
          epoch: EPOCH,
          role,
          bay: 'bay 1',
          device: role,
          serverMs: 0,
          seq,
        }),
      );
      line.send(JSON.stringify({ type: 'snapshot', seq, sessionMs: 0, state }));
      lines.add(line);
    });
  });
  await page.route('**/api/**', route => route.fulfill({ status: 404, body: '' }));
  await page.route('**/walk', route => route.fulfill({ contentType: 'text/html', body: documentOfFrames }));
  await page.goto(`${origin}/walk`);
  for (const name of names) {
    const frame = page.frame({ name });
    if (!frame) throw new Error(`no frame ${name}`);
    await frame.getByRole('button', { name: joinButton }).click();
    await frame.locator('.stop').waitFor();
  }
  return {
    page,
    async show(view) {
      seq += 1;
      const turn = `walk/${seq}`;
      state = bayState(view, turn, language);
      const { view: _, grammar: __, ...bay } = state;
      const patch = { bay, view: { kind: 'whole', view } };
      for (const line of lines) line.send(JSON.stringify({ type: 'patch', seq, sessionMs: 0, patch }));
      return page.evaluate(measure, { turn, key: view.key });
    },
    async keepPictures(folder, name, theme) {
      for (const each of names) {
        const frame = page.frame({ name: each });
        await frame?.evaluate(shown => {
          document.documentElement.dataset.theme = shown;
          for (const part of document.querySelectorAll('.body, .work')) part.scrollTo(0, 0);
        }, theme);
        const path = join(folder, `${name}-${each.replace(' ', '-')}-${theme}.png`);
        await page.locator(`iframe[name="${each}"]`).screenshot({ path });
      }
    },
    close: () => context.close(),
  };
}

/** Runs in the document of frames. */
async function measure({ turn, key }: { readonly turn: string; readonly key: string }): Promise<string[]> {
  const until = performance.now() + 60_000;
  const frames = [...document.querySelectorAll('iframe')];
  const askedIn = (frame: HTMLIFrameElement) => frame.contentDocument?.querySelector<HTMLElement>('.asked');
  while (frames.some(frame => askedIn(frame)?.dataset.turn !== turn)) {
    if (performance.now() > until)
      throw new Error(
        `${key} was not shown: ${frames.filter(frame => askedIn(frame)?.dataset.turn !== turn).map(frame => frame.name)}`,
      );
    await new Promise(resolve => setTimeout(resolve, 10));
  }
  const faults: string[] = [];
  for (const frame of frames) {
    const { contentDocument: page, contentWindow: window } = frame;
    if (!page || !window) continue;
    for (const theme of ['light', 'dark']) {
      page.documentElement.dataset.theme = theme;
      const fault = (text: string) => faults.push(`${key}, ${frame.name}, ${theme}: ${text}`);
      const { innerWidth, innerHeight } = window;
      const boxes: (readonly [string, DOMRect])[] = [];
      const look = (what: string, selector: string) => {
        const element = page.querySelector<HTMLElement>(selector);
        if (!element) return fault(`no ${what}`);
        const box = element.getBoundingClientRect();
        boxes.push([what, box]);
        const { left, right, top, bottom } = box;
        if (left < -0.5 || top < -0.5 || right > innerWidth + 0.5 || bottom > innerHeight + 0.5)
          fault(`${what} is outside: ${[left, top, right, bottom].map(Math.round)}`);
        if (box.width < 8 || box.height < 8) fault(`${what} has no size`);
        for (const [x, y] of [
          [(left + right) / 2, (top + bottom) / 2],
          [left + 3, top + 3],
          [right - 3, bottom - 3],
        ] as const) {
          const hit = page.elementFromPoint(x, y);
          if (!hit || !(element.contains(hit) || hit.contains(element)))
            fault(`${what} is covered by ${hit?.className ?? 'nothing'}`);
        }
      };
      const asked = page.querySelector<HTMLElement>('.asked');
      if (asked && asked.scrollHeight > asked.clientHeight + 1) fault('the question is cut off');
      look('the question', '.asked .prompt');
      look('STOP', '.stop');
      if (!page.querySelector('.chip.engine') && !page.querySelector('.shell[data-over]')) fault('no engine');
      else if (page.querySelector('.chip.engine')) look('the engine', '.chip.engine');
      if (page.querySelector('.timer')) look('the time', '.timer .digits');
      for (const [first, a] of boxes)
        for (const [second, b] of boxes)
          if (
            first < second &&
            a.left < b.right - 1 &&
            b.left < a.right - 1 &&
            a.top < b.bottom - 1 &&
            b.top < a.bottom - 1
          )
            fault(`${first} overlaps ${second}`);
      const body = page.querySelector<HTMLElement>('.body');
      const work = page.querySelector<HTMLElement>('.work');
      if (!body || !work) fault('no body');
      else {
        if (body.scrollTop + work.scrollTop > 0) fault('scrolled before anybody has scrolled');
        const room = body.getBoundingClientRect();
        const pad = page.querySelector('.pad')?.getBoundingClientRect();
        const confirms = page.querySelector('.answers.confirms') !== null;
        if (pad && !confirms && pad.bottom > room.bottom + 0.5)
          fault(`the number pad ends ${Math.round(pad.bottom - room.bottom)} px too low`);
        const first = page.querySelector('.choice')?.getBoundingClientRect();
        if (first && (confirms || !pad) && first.bottom > room.bottom + 0.5)
          fault(`the first answer ends ${Math.round(first.bottom - room.bottom)} px too low`);
        if (page.documentElement.scrollWidth > innerWidth || body.scrollWidth > body.clientWidth + 1) {
          const wide = [...page.querySelectorAll<HTMLElement>('body *:not(.unseen)')].filter(
            each => each.getBoundingClientRect().right > room.right + 0.5,
          );
          const named = wide
            .slice(-3)
            .map(each => `${each.className || each.tagName} "${each.textContent?.slice(0, 30)}"`);
          fault(`too wide: ${named.join('; ')}`);
        }
        // Whatever there is can be come to, and is not carried to the next question.
        const end = page.querySelector('.leave');
        for (const each of [body, work]) each.scrollTo(0, each.scrollHeight);
        const last = end?.getBoundingClientRect();
        if (!last || last.bottom > room.bottom + 1) fault('the end cannot be come to');
        if (theme === 'light') for (const each of [body, work]) each.scrollTo(0, 0);
      }
    }
  }
  return faults;
}
