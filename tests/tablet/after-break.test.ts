import { describe, expect, test } from 'vitest';
import WebSocket from 'ws';
import type { BayState } from '../../src/server/protocol/index.ts';
import { toSayAfterBreak } from '../../src/tablet/remote/after-break.ts';
import { Connection, type Line, type Missed } from '../../src/tablet/remote/connection.ts';
import { Face } from '../server/support/face.ts';
import { openShop } from '../server/support/shop.ts';
import { leadUntil, linesOf, passUntil } from '../server/support/whole-start.ts';

/** A line to a real laptop. */
function lineTo(base: string): Line & { cut(): void } {
  const socket = new WebSocket(`${base.replace('https', 'wss')}/ws`, {
    rejectUnauthorized: false,
    headers: { origin: base },
  });
  socket.on('error', () => {});
  return {
    send: text => socket.send(text),
    close: () => socket.close(),
    cut: () => socket.terminate(),
    onOpen: handler => socket.on('open', handler),
    onText: handler => socket.on('message', data => handler(String(data))),
    onClosed: handler => socket.on('close', handler),
  };
}

/** What is to be done later than that is not to come again. */
const LONGEST_RETRY_MS = 5_000;

interface Back {
  readonly missed: Missed;
  readonly state: BayState;
}

/** The leader's device loses its line at a state, and is back after some time of the session. */
async function awayFrom(key: string, isOver: (supervisor: Face) => boolean): Promise<Back> {
  const shop = await openShop();
  const token = await shop.pair('technician');
  const lead = await Face.paired(shop.base, token);
  await lead.do({ do: 'begin' });
  await leadUntil(key, lead, shop.clock(), await linesOf('demo-six'));
  const supervisor = await Face.paired(shop.base, await shop.pair('supervisor'));
  lead.close();
  let line: ReturnType<typeof lineTo> | undefined;
  let isHeldBack = true;
  let comeBack = () => {};
  let missed: Missed | undefined;
  const connection: Connection = new Connection(
    {
      token,
      openLine() {
        line = lineTo(shop.base);
        return line;
      },
      nowMs: () => performance.now(),
      wallMs: () => Date.now(),
      after(ms, act) {
        if (ms > LONGEST_RETRY_MS || connection.lineState !== 'broken') return;
        if (isHeldBack) comeBack = act;
        else act();
      },
      newId: () => crypto.randomUUID(),
      keptStops: { read: () => [], write() {} },
    },
    {
      onState() {},
      onSay() {},
      onHush() {},
      onCaughtUp(told) {
        missed = told;
      },
      onRefused() {},
      onPairing() {},
      onUnanswered() {},
    },
  );
  const isThere = (there: boolean) => () =>
    Boolean(supervisor.state?.devices.some(({ owner, connected }) => owner && connected === there));
  await supervisor.until(isThere(true));
  await expect.poll(() => connection.state, { timeout: 60_000 }).not.toBeNull();
  line?.cut();
  await supervisor.until(isThere(false));
  await passUntil(supervisor, shop.clock(), () => isOver(supervisor));
  isHeldBack = false;
  comeBack();
  await expect.poll(() => missed, { timeout: 60_000 }).toBeDefined();
  const { state } = connection;
  if (!state || !missed) throw new Error('The device is not back.');
  await connection.close();
  supervisor.close();
  await shop.server.close();
  return { missed, state };
}

const textsOf = (said: readonly { readonly text: string }[]) => said.map(({ text }) => text);

describe('A device that leads and is back after a break', () => {
  test('says the call-outs that stand and the question that is asked now, once, and nothing of what was before', async () => {
    const { missed, state } = await awayFrom(
      'warmUp.watch.asking',
      supervisor =>
        supervisor.state?.view?.state === 'stopped' &&
        supervisor
          .says()
          .some(({ priority, turn }) => priority === 'prompt' && turn === supervisor.state?.turn),
    );
    const said = missed.said ?? [];
    // Nobody answered: it was asked again and called out before it was stopped.
    expect(said.length).toBeGreaterThan(4);
    const toSay = toSayAfterBreak(missed, state);
    const question = said.findLast(({ priority }) => priority === 'prompt');
    expect(question?.turn).toBe(state.turn);
    expect(textsOf(toSay)).toEqual([...(state.view?.callOuts ?? []), question?.text]);
    // A notice that it was asked again, a reminder, another question: all of that is over.
    expect(textsOf(toSay).length).toBeLessThan(new Set(textsOf(said)).size);
  });

  test('says nothing of a call-out that was seen to, nor a question that another one has followed', async () => {
    const { missed, state } = await awayFrom(
      'firstFire.crank.ready',
      ({ key }) => key === 'firstFire.crank.askingClear',
    );
    const question = missed.said?.find(({ priority }) => priority === 'prompt');
    if (!question || !missed.said) throw new Error('No question was missed.');
    const called = { ...question, text: 'Key off now.', priority: 'hazard' } as const;
    const before = { ...question, text: 'What was asked before.', turn: 'another turn' };
    const all = { ...missed, said: [called, before, question, before] };
    expect(toSayAfterBreak(all, state)).toEqual([{ text: question.text, priority: 'prompt' }]);
    expect(toSayAfterBreak({ ...missed, said: [before] }, state)).toEqual([]);
    expect(toSayAfterBreak(all, { ...state, view: null })).toEqual([]);
    // What was said is too long ago: the question that is new is on the screen, and the one of before was heard.
    expect(textsOf(toSayAfterBreak({ ...missed, said: null }, state))).toEqual([state.view?.prompt]);
    expect(toSayAfterBreak({ ...missed, said: null, turn: state.turn }, state)).toEqual([]);
    // What ended the session is said as well, and nothing is asked behind it.
    const { view } = state;
    if (!view) throw new Error('There is no session.');
    const over = {
      ...state,
      view: { ...view, outcome: 'ended', callOuts: ['Do not fire it again.'] },
    } as const;
    expect(toSayAfterBreak({ ...missed, said: [called, question] }, over)).toEqual([
      { text: 'Do not fire it again.', priority: 'hazard' },
    ]);
  });
});
