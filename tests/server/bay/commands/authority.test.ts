import { describe, expect, test } from 'vitest';
import {
  type Asker,
  answerer,
  forbidden,
  mayCallForHelp,
  mayNotControl,
  mayNotLetGo,
  mayNotRenew,
} from '../../../../src/server/bay/commands/authority.ts';
import { type controlIds, type Deed, type Refusal, roles } from '../../../../src/server/protocol/index.ts';

const leader: Asker = { role: 'technician', owner: true };
const follower: Asker = { role: 'technician', owner: false };
const second: Asker = { role: 'second', owner: false };
const supervisor: Asker = { role: 'supervisor', owner: false };
const all = { leader, follower, second, supervisor };
type Name = keyof typeof all;

const control = (id: (typeof controlIds)[number]): Deed => ({ do: 'control', turn: 't', id });
const say: Deed = { do: 'say', turn: 't', text: 'yes', via: 'touch' };

/** Who may, by what they want; of the others, why not. */
const rights: readonly (readonly [Deed, readonly Name[], Partial<Record<Name, Refusal['code']>>])[] = [
  [{ do: 'stop' }, ['leader', 'follower', 'second', 'supervisor'], {}],
  [{ do: 'forget', device: 'd' }, ['leader', 'follower', 'second', 'supervisor'], {}],
  [{ do: 'renew', device: 'd' }, ['leader', 'follower', 'second', 'supervisor'], {}],
  [
    { do: 'askHold' },
    ['supervisor'],
    { leader: 'notYourRole', follower: 'notYourRole', second: 'notYourRole' },
  ],
  [
    { do: 'clear', turn: 't' },
    ['second'],
    { leader: 'notYourRole', follower: 'notYourRole', supervisor: 'notYourRole' },
  ],
  [
    { do: 'begin' },
    ['leader'],
    { follower: 'notTheOwner', second: 'notYourRole', supervisor: 'notYourRole' },
  ],
  ...(['resume', 'setAside'] as const).map(
    what =>
      [
        what === 'resume' ? { do: what, session: 's' } : { do: what },
        ['leader'],
        { follower: 'notTheOwner', second: 'notYourRole', supervisor: 'notYourRole' },
      ] as const,
  ),
  [
    { do: 'declineHold' },
    ['leader'],
    { follower: 'notTheOwner', second: 'notYourRole', supervisor: 'notYourRole' },
  ],
  // Whoever is at the engine, whichever device leads.
  [{ do: 'madeSafe' }, ['leader', 'follower', 'second'], { supervisor: 'notYourRole' }],
  [{ do: 'takeOver' }, ['leader', 'follower'], { second: 'notYourRole', supervisor: 'notYourRole' }],
  // Who answers whose question is looked at when the question is known: `answerer`.
  [say, ['leader', 'follower', 'second', 'supervisor'], {}],
  ...(['hold', 'sayAgain', 'status', 'timeLeft', 'help'] as const).map(
    id => [control(id), ['leader', 'follower', 'second'], { supervisor: 'notYourRole' }] as const,
  ),
  ...(['continue', 'goBack', 'skip'] as const).map(
    id =>
      [
        control(id),
        ['leader'],
        { follower: 'notTheOwner', second: 'notYourRole', supervisor: 'notYourRole' },
      ] as const,
  ),
];

describe('What somebody may do at all', () => {
  test.each(rights)('%j: %j', (deed, may, mayNot) => {
    for (const name of Object.keys(all) as Name[]) {
      const refusal = forbidden(all[name], deed);
      expect([name, refusal?.code]).toEqual([name, may.includes(name) ? undefined : mayNot[name]]);
      if (refusal) expect(refusal.sentence).toMatch(/^[A-Z].{15,}\.$/);
    }
  });

  test('a device that does not lead is told to take over first, the supervisor what is left to them', () => {
    expect(forbidden(follower, { do: 'begin' })?.sentence).toMatch(/take over first/);
    expect(forbidden(supervisor, { do: 'begin' })?.sentence).toMatch(/may stop, ask for a hold/);
    expect(forbidden(leader, { do: 'askHold' })?.sentence).toMatch(/hold it yourself/);
    expect(forbidden(leader, { do: 'clear', turn: 't' })?.sentence).toMatch(/Only the second person/);
    for (const deed of [{ do: 'begin' } as const, control('skip')])
      expect(forbidden(second, deed)?.sentence).toMatch(/the technician's to do/);
  });
});

describe('A word that is always understood', () => {
  test('is never the supervisor’s, whichever it is', () => {
    for (const id of [
      'hold',
      'sayAgain',
      'status',
      'timeLeft',
      'help',
      'continue',
      'goBack',
      'skip',
    ] as const)
      expect(mayNotControl(supervisor, id)).toMatchObject({
        code: 'notYourRole',
        sentence: 'The supervisor asks for a hold; nothing else of these words.',
      });
  });
});

describe('Who calls for help', () => {
  test('are those at the engine, who see it; not the supervisor', () => {
    expect(roles.filter(mayCallForHelp).toSorted()).toEqual(['second', 'technician']);
  });
});

describe('Who lets go of a device', () => {
  const gone = { own: false, connected: false };
  const there = { own: false, connected: true };

  test('everybody of their own, connected or not', () => {
    for (const asker of Object.values(all))
      for (const connected of [true, false]) expect(mayNotLetGo(asker, { own: true, connected })).toBeNull();
  });

  test('the supervisor of any; the one who leads of one that has left; nobody else', () => {
    expect(mayNotLetGo(supervisor, there)).toBeNull();
    expect(mayNotLetGo(leader, gone)).toBeNull();
    expect(mayNotLetGo(leader, there)).toMatchObject({
      code: 'notNow',
      sentence: expect.stringMatching(/still there/),
    });
    for (const device of [gone, there]) {
      expect(mayNotLetGo(follower, device)).toMatchObject({ code: 'notTheOwner' });
      expect(mayNotLetGo(second, device)).toMatchObject({
        code: 'notYourRole',
        sentence: expect.stringMatching(/Only the technician/),
      });
    }
  });
});

describe('Who renews a pairing', () => {
  const own = { own: true };
  const other = { own: false };

  test('somebody else of the bay does, never the device itself', () => {
    for (const asker of Object.values(all))
      expect(mayNotRenew(asker, own)).toMatchObject({
        code: 'notYourRole',
        sentence: 'Somebody else of the bay renews the pairing of this device.',
      });
    expect(mayNotRenew(leader, other)).toBeNull();
    expect(mayNotRenew(supervisor, other)).toBeNull();
    expect(mayNotRenew(follower, other)?.code).toBe('notTheOwner');
    expect(mayNotRenew(second, other)).toMatchObject({
      code: 'notYourRole',
      sentence: 'Only the technician and the supervisor renew pairings.',
    });
  });
});

describe('Whose an answer is', () => {
  const question = {
    addressed: 'technician',
    ownDeviceOnly: false,
    supervisorsOwn: false,
    secondOnly: false,
  } as const;
  const toSecond = { ...question, addressed: 'second' } as const;

  test('through one device for both, it is that of whoever was asked', () => {
    for (const each of [question, toSecond])
      expect(answerer(leader, each)).toEqual({ ok: true, speaker: undefined });
  });

  test('where the second person has a device, it is the technician’s own, and no answer for the second person', () => {
    expect(answerer(leader, { ...question, ownDeviceOnly: true })).toEqual({
      ok: true,
      speaker: 'technician',
    });
    expect(answerer(leader, { ...toSecond, ownDeviceOnly: true })).toMatchObject({
      ok: false,
      refusal: { code: 'notYourRole', sentence: expect.stringMatching(/on their own device/) },
    });
  });

  test('of the second person it counts where they are asked, or alone are believed', () => {
    expect(answerer(second, toSecond)).toEqual({ ok: true, speaker: 'second' });
    expect(answerer(second, { ...question, secondOnly: true })).toEqual({ ok: true, speaker: 'second' });
    expect(answerer(second, question)).toMatchObject({
      ok: false,
      refusal: { code: 'notYourRole', sentence: expect.stringMatching(/not for the second person/) },
    });
  });

  test('of the second person it never counts where the supervisor is asked, however often that was misunderstood', () => {
    for (const supervisorsOwn of [true, false])
      expect(
        answerer(second, { ...question, addressed: 'supervisor', supervisorsOwn, secondOnly: true }),
      ).toMatchObject({ ok: false, refusal: { code: 'notYourRole' } });
  });

  test('of a device that does not lead, and of the supervisor, it never counts', () => {
    for (const addressed of ['technician', 'second'] as const)
      for (const ownDeviceOnly of [true, false])
        for (const secondOnly of [true, false]) {
          const each = { addressed, ownDeviceOnly, supervisorsOwn: false, secondOnly };
          expect(answerer(follower, each)).toMatchObject({ ok: false, refusal: { code: 'notTheOwner' } });
          expect(answerer(supervisor, each)).toMatchObject({
            ok: false,
            refusal: { code: 'notYourRole', sentence: expect.stringMatching(/cannot answer for others/) },
          });
        }
  });

  test('of the supervisor it is their own where they have a device, and nobody signs for them', () => {
    const sign = { ...question, addressed: 'supervisor' } as const;
    expect(answerer(leader, sign)).toEqual({ ok: true, speaker: undefined });
    expect(answerer(leader, { ...sign, supervisorsOwn: true })).toMatchObject({
      ok: false,
      refusal: { code: 'notYourRole', sentence: expect.stringMatching(/on their own device/) },
    });
    expect(answerer(supervisor, { ...sign, supervisorsOwn: true })).toEqual({
      ok: true,
      speaker: 'supervisor',
    });
  });

  test('of the technician it counts where another than the supervisor is asked, though that one has a device', () => {
    expect(answerer(leader, { ...question, supervisorsOwn: true })).toEqual({ ok: true, speaker: undefined });
  });

  test('each role has a word about it', () => {
    expect([...roles].sort()).toEqual(['second', 'supervisor', 'technician']);
  });
});
