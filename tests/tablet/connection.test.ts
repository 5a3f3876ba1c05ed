import { describe, expect, it } from 'vitest';
import { PROTOCOL_VERSION } from '../../src/server/protocol/index.ts';
import { ANSWER_WITHIN_MS, stopNotice } from '../../src/tablet/face/stop-state.ts';
import { Connection, type Missed } from '../../src/tablet/remote/connection.ts';
import { emptyBay as state } from './helpers/bay-state.ts';

/**
 * A line to a server that says what the test says. Closed from here, it does not say for a long time that it is: the other
 * side would have to answer first, and a dead one never does.
 */
function rig() {
  const clock = { nowMs: 0 };
  const lines: { sent: unknown[]; open(): void; text(message: unknown): void; closed(): void }[] = [];
  const later: (() => void)[] = [];
  const timers: { readonly ms: number; act(): void }[] = [];
  const refused: string[] = [];
  const shouts: string[] = [];
  /** What there was to be said, and what was missed. */
  const told: (string | Missed)[] = [];
  let ids = 0;
  const connection: Connection = new Connection(
    {
      token: 'secret',
      keptStops: { read: () => [], write() {} },
      openLine() {
        const sent: unknown[] = [];
        let opened = () => {};
        let texted: (text: string) => void = () => {};
        let closed = () => {};
        lines.push({
          sent,
          open: () => opened(),
          text: message => texted(JSON.stringify(message)),
          closed: () => closed(),
        });
        return {
          send: text => sent.push(JSON.parse(text)),
          close() {},
          onOpen: handler => {
            opened = handler;
          },
          onText: handler => {
            texted = handler;
          },
          onClosed: handler => {
            closed = handler;
          },
        };
      },
      nowMs: () => clock.nowMs,
      wallMs: () => 1000,
      after(ms, act) {
        later.push(act);
        timers.push({ ms, act });
      },
      newId: () => {
        ids += 1;
        return `00000000-0000-4000-8000-${String(ids).padStart(12, '0')}`;
      },
    },
    {
      onState() {},
      onSay: ({ text }) => told.push(text),
      onHush: () => told.push('hush'),
      onCaughtUp: missed => told.push(missed),
      onRefused: sentence => refused.push(sentence),
      onPairing() {},
      onUnanswered: () => shouts.push(connection.stop),
    },
  );
  const line = () => {
    const last = lines.at(-1);
    if (!last) throw new Error('no line was opened');
    return last;
  };
  const welcome = (epoch = 'epoch-one', seq = 0) =>
    line().text({
      type: 'welcome',
      v: PROTOCOL_VERSION,
      epoch,
      role: 'second',
      bay: 'one',
      device: 'd',
      serverMs: 900,
      seq,
    });
  const kinds = () => line().sent.map(each => Reflect.get(Object(each), 'type'));
  /** All that was to be done after so long. */
  const passes = (ms: number) => {
    for (const timer of timers.filter(each => each.ms === ms)) timer.act();
  };
  return { connection, clock, lines, later, refused, shouts, told, line, welcome, kinds, passes };
}

const patch = (seq: number, turn: string) => ({
  type: 'patch',
  seq,
  sessionMs: 0,
  patch: { bay: { turn }, view: { kind: 'same' } },
});

it('says hello, takes the snapshot and the patches after it in order', () => {
  const { connection, line, welcome } = rig();
  line().open();
  expect(line().sent).toEqual([{ type: 'hello', v: PROTOCOL_VERSION, token: 'secret' }]);
  welcome();
  line().text({ type: 'snapshot', seq: 4, sessionMs: 0, state });
  line().text(patch(5, 'b'));
  line().text(patch(5, 'c'));
  expect(connection.state?.turn).toBe('b');
});

it('opens a new line at a gap, and asks there for what it missed', () => {
  const { connection, line, lines, later, welcome } = rig();
  line().open();
  welcome();
  line().text({ type: 'snapshot', seq: 4, sessionMs: 0, state });
  line().text(patch(6, 'late'));
  expect(connection.lineState).toBe('broken');
  expect(connection.state?.turn).toBe('a');
  later.at(-1)?.();
  expect(lines).toHaveLength(2);
  line().open();
  expect(line().sent).toEqual([
    { type: 'hello', v: PROTOCOL_VERSION, token: 'secret', resume: { epoch: 'epoch-one', seq: 4 } },
  ]);
});

it('asks for nothing to go on from where its line broke before any state had come', () => {
  const { line, later, welcome } = rig();
  line().open();
  welcome();
  line().closed();
  later.at(-1)?.();
  line().open();
  expect(line().sent).toEqual([{ type: 'hello', v: PROTOCOL_VERSION, token: 'secret' }]);
});

const say = (seq: number, text: string) =>
  ({ type: 'say', seq, sessionMs: 0, text, priority: 'prompt', addressed: 'technician', turn: 'b' }) as const;

describe('What is sent again after a break', () => {
  /** Four frames are known, and the line broke; on the next one the laptop has come to the eighth. */
  function backAgain() {
    const parts = rig();
    const { line, later, welcome } = parts;
    line().open();
    welcome('epoch-one', 4);
    line().text({ type: 'snapshot', seq: 4, sessionMs: 0, state });
    expect(parts.told).toEqual([]);
    line().closed();
    later.at(-1)?.();
    line().open();
    welcome('epoch-one', 8);
    return parts;
  }

  it('is told as missed, all at once, when the state is as of now, and what comes then is said', () => {
    const { connection, line, told } = backAgain();
    line().text(say(5, 'old'));
    line().text({ type: 'hush', seq: 6, sessionMs: 0 });
    line().text(say(7, 'newer'));
    expect(told).toEqual([]);
    line().text(patch(8, 'b'));
    expect(told).toEqual([{ said: [say(5, 'old'), say(7, 'newer')], hushed: true, turn: 'a' }]);
    expect(connection.state?.turn).toBe('b');
    line().text(say(9, 'now'));
    expect(told.at(-1)).toBe('now');
  });

  it('is kept where the line breaks once more as it catches up', () => {
    const { line, later, welcome, told } = backAgain();
    line().text(say(5, 'old'));
    line().closed();
    later.at(-1)?.();
    line().open();
    welcome('epoch-one', 6);
    line().text(say(6, 'newer'));
    expect(told).toEqual([{ said: [say(5, 'old'), say(6, 'newer')], hushed: false, turn: 'a' }]);
  });

  it('is not known where all that there is is the state', () => {
    const { line, told } = backAgain();
    line().text({ type: 'snapshot', seq: 8, sessionMs: 0, state: { ...state, turn: 'b' } });
    expect(told).toEqual([{ said: null, hushed: false, turn: 'a' }]);
  });
});

it('keeps a stop until the server has it, and sends no late answer', () => {
  const { connection, line, later, refused, welcome, kinds } = rig();
  connection.command({ do: 'stop' });
  connection.command({ do: 'clear', turn: 'a' });
  expect(refused).toHaveLength(1);
  line().open();
  welcome();
  expect(kinds()).toEqual(['hello', 'command', 'ping']);
  const [, first] = line().sent;
  line().closed();
  later.at(-1)?.();
  line().open();
  welcome();
  expect(line().sent[1]).toEqual(first);
  line().text({ type: 'ack', id: Reflect.get(Object(first), 'id'), again: true });
  line().closed();
  later.at(-1)?.();
  line().open();
  welcome();
  expect(kinds()).toEqual(['hello', 'ping']);
});

it('stays away once it has been refused for good', () => {
  const { connection, line, lines, later, refused } = rig();
  line().open();
  const before = later.length;
  line().text({ type: 'error', id: null, code: 'notPaired', sentence: 'Pair again.', final: true });
  line().closed();
  expect(connection.lineState).toBe('refused');
  expect(refused).toEqual(['Pair again.']);
  expect(lines).toHaveLength(1);
  expect(later).toHaveLength(before);
});

describe('a device whose pairing has run out', () => {
  it('sends nothing by itself any more, neither level nor engine, and its stop all the same', () => {
    const { connection, line, welcome } = rig();
    line().open();
    welcome();
    const level = { type: 'level', levelDbfs: -40, clipping: false, speech: false } as const;
    connection.tell(level);
    expect(line().sent).toContainEqual(level);
    line().text({
      type: 'pairing',
      state: 'stopOnly',
      expiresAtMs: 1,
      sentence: 'It may stop, and nothing else.',
    });
    const before = line().sent.length;
    connection.tell(level);
    expect(line().sent).toHaveLength(before);
    connection.command({ do: 'stop' });
    expect(line().sent.at(-1)).toMatchObject({ type: 'command', deed: { do: 'stop' } });
  });
});

describe('A stop', () => {
  const idOf = (message: unknown) => Reflect.get(Object(message), 'id');
  const commands = (sent: readonly unknown[]) =>
    sent.filter(each => Reflect.get(Object(each), 'type') === 'command');

  it('is shown as stopping at the touch, and as stopped at the answer', () => {
    const { connection, line, welcome, passes, shouts } = rig();
    line().open();
    welcome();
    connection.command({ do: 'stop' });
    expect(stopNotice(connection.stop, null)?.text).toBe('Stopping…');
    line().text({ type: 'ack', id: idOf(commands(line().sent)[0]), again: false, stop: 'stopped' });
    // Where there is a session, its own state says so on every face.
    expect(stopNotice(connection.stop, { state: 'stopped', outcome: null })).toBeNull();
    expect(stopNotice(connection.stop, null)?.text).toBe('Stopped. Key off.');
    expect(stopNotice(connection.stop, { state: 'working', outcome: null })).toBeNull();
    passes(ANSWER_WITHIN_MS);
    expect(shouts).toEqual([]);
  });

  it('where nothing runs says so to the one who pressed it, before any session is there', () => {
    const { connection, line, welcome } = rig();
    line().open();
    welcome();
    connection.command({ do: 'stop' });
    line().text({ type: 'ack', id: idOf(commands(line().sent)[0]), again: false, stop: 'nothingRuns' });
    expect(stopNotice(connection.stop, null)?.text).toContain('Key off. No session runs here');
  });

  it('without an answer within a second says what to do, once, and goes on trying', () => {
    const { connection, line, lines, welcome, passes, shouts } = rig();
    line().open();
    welcome();
    connection.command({ do: 'stop' });
    const [sent] = commands(line().sent);
    passes(ANSWER_WITHIN_MS);
    passes(ANSWER_WITHIN_MS);
    expect(shouts).toEqual(['unanswered']);
    expect(stopNotice(connection.stop, null)).toMatchObject({ tone: 'bad' });
    // The line gave nothing back: another one is opened, and the same stop is sent there.
    passes(2 * ANSWER_WITHIN_MS);
    passes(300);
    expect(lines).toHaveLength(2);
    line().open();
    welcome();
    expect(commands(line().sent)).toEqual([sent]);
    line().text({ type: 'ack', id: idOf(sent), again: true, stop: 'stopped' });
    expect(connection.stop).toBe('stopped');
  });

  it('before the laptop has answered at all is shown at once too', () => {
    const { connection, passes, shouts } = rig();
    connection.command({ do: 'stop' });
    expect(connection.stop).toBe('stopping');
    passes(ANSWER_WITHIN_MS);
    expect(shouts).toEqual(['unanswered']);
  });

  it('of a device that was refused for good reaches nobody, and that is said at once', () => {
    const { connection, line, shouts } = rig();
    line().open();
    line().text({ type: 'error', id: null, code: 'notPaired', sentence: 'Pair again.', final: true });
    connection.command({ do: 'stop' });
    expect(shouts).toEqual(['unanswered']);
  });
});

it('comes back after a refusal that is not for good: too many messages end one line only', () => {
  const { connection, line, lines, later } = rig();
  line().open();
  line().text({ type: 'error', id: null, code: 'tooFast', sentence: 'Slow down.', final: true });
  line().closed();
  expect(connection.lineState).toBe('broken');
  later.at(-1)?.();
  expect(lines).toHaveLength(2);
});

it('says on each new line whether this device hears', () => {
  const { connection, line, later, welcome, kinds } = rig();
  line().open();
  welcome();
  connection.setListening(true);
  line().closed();
  later.at(-1)?.();
  line().open();
  welcome();
  expect(kinds()).toEqual(['hello', 'ear', 'ping']);
});

describe('A line that gives nothing back any more', () => {
  const PING_MS = 2_000;
  const DEAD_MS = 6_000;

  it('is told as broken after six seconds, though its end is never told, and another one is opened', () => {
    const { connection, clock, line, lines, welcome, passes } = rig();
    line().open();
    welcome();
    clock.nowMs = DEAD_MS;
    passes(PING_MS);
    expect(connection.lineState).toBe('connected');
    clock.nowMs = DEAD_MS + 1;
    passes(PING_MS);
    expect(connection.lineState).toBe('broken');
    passes(300);
    expect(lines).toHaveLength(2);
  });

  it('is told as broken too where it speaks what nobody understands', () => {
    const { connection, line, lines, welcome, passes } = rig();
    line().open();
    welcome();
    line().text({ type: 'nonsense' });
    expect(connection.lineState).toBe('broken');
    passes(300);
    expect(lines).toHaveLength(2);
  });

  it('before the laptop has said anything on it is given up as well', () => {
    const { connection, lines, passes } = rig();
    passes(DEAD_MS);
    expect(connection.lineState).toBe('broken');
    passes(300);
    expect(lines).toHaveLength(2);
    // The time of the first is over; that of the second is its own.
    expect(connection.lineState).toBe('broken');
  });
});

describe('An answer', () => {
  const answer = { do: 'say', turn: 'a', text: 'card is right', via: 'touch' } as const;
  const UNCONFIRMED_MS = 3_000;
  const idOf = (message: unknown) => Reflect.get(Object(message), 'id');

  it('that the laptop does not acknowledge in time is told, once', () => {
    const { connection, line, welcome, passes, refused } = rig();
    line().open();
    welcome();
    connection.command(answer);
    expect(refused).toEqual([]);
    passes(UNCONFIRMED_MS);
    expect(refused).toEqual([
      'The laptop has not acknowledged what was given last; see what is asked, then answer again.',
    ]);
    line().closed();
    expect(refused).toHaveLength(1);
  });

  it('that was under way when the line broke is told at once: it may have come or not', () => {
    const { connection, line, welcome, passes, refused } = rig();
    line().open();
    welcome();
    connection.command(answer);
    line().closed();
    expect(refused).toHaveLength(1);
    passes(UNCONFIRMED_MS);
    expect(refused).toHaveLength(1);
  });

  it('that was acknowledged, or refused, is nothing to tell of', () => {
    const { connection, line, welcome, passes, refused } = rig();
    line().open();
    welcome();
    connection.command(answer);
    line().text({ type: 'ack', id: idOf(line().sent.at(-1)), again: false });
    connection.command(answer);
    line().text({
      type: 'error',
      id: idOf(line().sent.at(-1)),
      code: 'notNow',
      sentence: 'It is not asked.',
      final: false,
    });
    passes(UNCONFIRMED_MS);
    line().closed();
    expect(refused).toEqual(['It is not asked.']);
  });
});

describe('A page whose line another tab of the browser has taken', () => {
  const REPLACED = 'This device is connected in another place now.';

  function replaced() {
    const all = rig();
    all.line().open();
    all.welcome();
    all.line().text({ type: 'error', id: null, code: 'replaced', sentence: REPLACED, final: true });
    return all;
  }

  it('stays away, until it is told to take the line', () => {
    const { connection, line, lines, welcome } = replaced();
    line().closed();
    expect([connection.lineState, connection.refusal?.code, lines.length]).toEqual([
      'refused',
      'replaced',
      1,
    ]);
    connection.takeLine();
    expect([connection.lineState, connection.refusal, lines.length]).toEqual(['connecting', null, 2]);
    line().open();
    welcome();
    connection.takeLine();
    expect([connection.lineState, lines.length]).toEqual(['connected', 2]);
  });

  it('takes it by itself for a stop that is touched; one that is heard the other tab hears too', () => {
    const { connection, line, lines, welcome, shouts } = replaced();
    connection.command({ do: 'stop', via: 'voice' });
    expect([lines.length, shouts]).toEqual([1, ['unanswered']]);
    connection.command({ do: 'stop' });
    expect([lines.length, shouts.length]).toEqual([2, 1]);
    line().open();
    welcome();
    expect(line().sent.slice(1, 3)).toMatchObject([
      { type: 'command', deed: { do: 'stop', via: 'voice' } },
      { type: 'command', deed: { do: 'stop' } },
    ]);
  });

  it('that is refused for another reason takes none', () => {
    const { connection, line, lines } = rig();
    line().open();
    line().text({ type: 'error', id: null, code: 'notPaired', sentence: 'Pair again.', final: true });
    connection.takeLine();
    expect([connection.lineState, lines.length]).toEqual(['refused', 1]);
  });
});
