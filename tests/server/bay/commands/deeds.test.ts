import { beforeEach, describe, expect, test } from 'vitest';
import { english } from '../../../../prompts/en/index.ts';
import { readLog } from '../../../../src/record/index.ts';
import { readRecorded } from '../../../../src/record/vocabulary/index.ts';
import {
  callTyped,
  isStop,
  planned,
  running,
  type Scene,
  speaksFor,
} from '../../../../src/server/bay/commands/deeds.ts';
import { clearOf, questionOf, Turns } from '../../../../src/server/bay/commands/question.ts';
import type { Crew } from '../../../../src/server/bay/crew.ts';
import type { Run } from '../../../../src/server/bay/run.ts';
import type { Pairing } from '../../../../src/server/pairing/pairings.ts';
import { controlIds, type Deed, type Role } from '../../../../src/server/protocol/index.ts';
import { grammarOf } from '../../../../src/session/grammar.ts';
import { goodReply, goUntil, type Rig, rig } from '../../../helpers/session-rig.ts';
import { allElse, slowDisk } from '../parts-of-a-bay.ts';

const NO_NUMBER = { min: Number.NaN, max: Number.NaN, step: 1 };

type SessionDeed = Parameters<typeof planned>[0];

const by = (role: Role): Pairing => ({
  device: role,
  role,
  name: role,
  bay: 'bay',
  expiresAtMs: 0,
  tokenHash: '',
});

let bench: Rig;
beforeEach(async () => {
  bench = await rig();
  await bench.session.begin();
});

/** The bench's session as a bay sees it: the technician's device leads or follows, the second person's is paired or is not. */
function scene({
  turn = 't' as string | null,
  secondHasDevice = false,
  supervisorHasDevice = false,
  leads = true,
} = {}): Scene {
  const crew: Pick<Crew, 'has' | 'isOwner'> = {
    has: role => (role === 'second' && secondHasDevice) || (role === 'supervisor' && supervisorHasDevice),
    isOwner: ({ role }) => leads && role === 'technician',
  };
  return { run: { session: bench.session } as Run, crew: crew as Crew, turn };
}

/** A while later, and the tool says nothing: in a stop it calls out again and again. */
const silent = async () => {
  await bench.pass(60_000);
  for (let turn = 0; bench.session.hearsOnlyStop && turn < 100; turn += 1) await bench.pass(500);
};
/** A number that is heard as soon as the tool is silent. */
const hearNumber = async (id: string, value: number) => {
  await silent();
  bench.session.hear({ kind: 'number', id, value, text: String(value), confidence: 1 }, 'voice');
  await bench.session.settled();
};
const say = (text: string): SessionDeed => ({ do: 'say', turn: 't', text, via: 'touch' });
const hear = (heard: Extract<Deed, { do: 'heard' }>['heard']): SessionDeed => ({
  do: 'heard',
  turn: 't',
  heard,
});

async function done(deed: SessionDeed, role: Role = 'technician', at = scene()): Promise<void> {
  planned(deed, by(role), at)();
  await bench.session.settled();
}

/** By whom, and by which way, what was done last stands on the record. */
async function recorded() {
  const { entries } = readRecorded((await readLog(bench.path)).entries);
  const last = entries.findLast(entry => entry.kind === 'event' && entry.data.type !== 'clock');
  return last?.kind === 'event' ? { by: last.data.by, via: last.data.via } : undefined;
}

/** What was done last, as it stands on the record. */
async function lastEvent() {
  const { entries } = readRecorded((await readLog(bench.path)).entries);
  const events = entries.flatMap(entry => (entry.kind === 'event' ? [entry.data] : []));
  return events.findLast(({ type }) => type !== 'clock');
}

describe('A stop', () => {
  test('is one, whichever way it was said', () => {
    for (const deed of [
      { do: 'stop' },
      say('Stop!'),
      say('please stop now'),
      hear({ kind: 'stop', text: 'stop' }),
    ] satisfies Deed[])
      expect(isStop(deed, english)).toBe(true);
  });

  test('is nothing else', () => {
    for (const deed of [
      say('understood'),
      hear({ kind: 'unclear', text: 'stop', reason: 'lowConfidence' }),
      { do: 'takeOver' },
      { do: 'control', turn: 't', id: 'hold' },
    ] satisfies Deed[])
      expect(isStop(deed, english)).toBe(false);
  });
});

describe('What is said or touched', () => {
  test('answers the question that was seen, as that of the one who was asked', async () => {
    await done(say('card is right'));
    expect(bench.key()).not.toBe('job.card.asking');
  });

  test('stands on the record as touched, by the one who touched it', async () => {
    await done({ do: 'control', turn: 't', id: 'hold' }, 'second');
    expect(await recorded()).toEqual({ by: 'second', via: 'touch' });
  });

  test('by a supervisor is theirs to say or not before anything else that may be wrong with it', () => {
    expect(() => planned(say('  '), by('supervisor'), scene())).toThrow(
      expect.objectContaining({ code: 'notYourRole' }),
    );
  });

  test('counts for no other question, and for none while its answer is being carried out', () => {
    for (const turn of ['another', null])
      for (const deed of [
        say('card is right'),
        hear({ kind: 'reply', id: 'cardRight', text: 'card is right', confidence: 1 }),
        { do: 'clear', turn: 't' } as const,
        { do: 'control', turn: 't', id: 'goBack' } as const,
      ])
        expect(() =>
          planned(deed, by(deed.do === 'clear' ? 'second' : 'technician'), scene({ turn })),
        ).toThrow(
          expect.objectContaining({ code: 'tooLate', message: expect.stringContaining('no longer asked') }),
        );
    expect(bench.key()).toBe('job.card.asking');
  });

  test('is refused from a device that does not lead, and where it is nothing', () => {
    expect(() => planned(say('card is right'), by('second'), scene())).toThrow(
      expect.objectContaining({ code: 'notYourRole' }),
    );
    expect(() => planned(say('  '), by('technician'), scene())).toThrow(
      expect.objectContaining({ code: 'malformed', message: 'Nothing was said.' }),
    );
  });
});

describe('A control', () => {
  test('that means the same whatever is asked needs no turn; the others do', () => {
    const late = scene({ turn: 'another' });
    for (const id of controlIds) {
      const plan = () => planned({ do: 'control', turn: 't', id }, by('technician'), late);
      if (['hold', 'sayAgain', 'status', 'timeLeft', 'help'].includes(id)) expect(plan).not.toThrow();
      else expect(plan).toThrow(expect.objectContaining({ code: 'tooLate' }));
    }
  });

  test('is done as that of the one who touched it', async () => {
    const before = bench.said.length;
    await done({ do: 'control', turn: 't', id: 'sayAgain' }, 'second');
    expect(bench.said.length).toBe(before + 1);
    await done({ do: 'control', turn: 't', id: 'hold' });
    expect(bench.session.moment.matches('held')).toBe(true);
  });
});

describe('What a device heard', () => {
  const right = { kind: 'reply', id: 'cardRight', text: 'card is right', confidence: 0.9 } as const;

  test('counts when the tool is silent, and not while it speaks', async () => {
    expect(bench.session.hearsOnlyStop).toBe(true);
    expect(() => planned(hear(right), by('technician'), scene())).toThrow(
      expect.objectContaining({ code: 'notNow', message: expect.stringContaining('answer by touch') }),
    );
    await silent();
    await done(hear(right));
    expect(bench.key()).not.toBe('job.card.asking');
  });

  test('answers nothing that has not been said yet', async () => {
    await silent();
    const disk = slowDisk(bench.record);
    planned(say('card is right'), by('technician'), scene())();
    await allElse();
    expect(bench.key()).not.toBe('job.card.asking');
    expect([bench.session.isAsked, bench.session.hearsOnlyStop]).toEqual([false, false]);
    const yes = hear({ kind: 'reply', id: 'yes', text: 'yes', confidence: 1 });
    expect(() => planned(yes, by('technician'), scene())).toThrow(
      expect.objectContaining({ code: 'notNow', message: expect.stringContaining('answer by touch') }),
    );
    disk.release();
    await bench.session.settled();
  });

  test('counts only if it could have been said now', async () => {
    await silent();
    for (const heard of [
      { ...right, id: 'signed' },
      { kind: 'number', id: 'engineSpeed', value: 800, text: 'eight hundred', confidence: 1 } as const,
    ])
      expect(() => planned(hear(heard), by('technician'), scene())).toThrow(
        expect.objectContaining({
          code: 'notNow',
          message: `"${heard.text}" is no answer to what is asked now.`,
        }),
      );
    await done(hear({ kind: 'unclear', text: 'mumble', reason: 'outOfGrammar' }));
    expect(bench.key()).toBe('job.card.asking');
  });

  test('stands on the record as said', async () => {
    await silent();
    await done(hear(right));
    expect(await recorded()).toEqual({ by: 'technician', via: 'voice' });
  });

  test('that holds or asks for help counts as that of whoever said it; the others of these words are the leader’s', async () => {
    const word = (id: string) => hear({ kind: 'reply', id, text: id, confidence: 0.9 });
    await silent();
    for (const id of ['goBack', 'continue'])
      expect(() => planned(word(id), by('second'), scene())).toThrow(
        expect.objectContaining({ code: 'notYourRole', message: "This is the technician's to do." }),
      );
    await done(word('hold'), 'second');
    expect(bench.session.moment.matches('held')).toBe(true);
    expect(await recorded()).toEqual({ by: 'second', via: 'voice' });
    await silent();
    await done(word('continue'));
    expect(bench.session.moment.matches('held')).toBe(false);
  });

  test("that the engine runs on, that it burns or that somebody is hurt is anybody's to tell, in a stop", async () => {
    const urgent = (['stillRunning', 'causeSmokeOrFire', 'causeSomeoneHurt'] as const).map(id =>
      hear({ kind: 'reply', id, text: id, confidence: 0.9 }),
    );
    await silent();
    const [runsOn, ...calls] = urgent.map(deed => () => planned(deed, by('second'), scene()));
    expect(runsOn).toThrow(expect.objectContaining({ code: 'notYourRole' }));
    // Beside no stop yet it is one.
    for (const call of calls) expect(call).not.toThrow();
    bench.session.receive({ type: 'stop' }, 'second', 'touch');
    await bench.session.settled();
    await silent();
    for (const deed of urgent) {
      expect(() => planned(deed, by('supervisor'), scene())).toThrow(
        expect.objectContaining({ code: 'notYourRole' }),
      );
      await done(deed, 'second');
      await silent();
    }
    expect(bench.session.moment.context.stop).toMatchObject({
      cause: 'someoneHurt',
      also: ['overspeed', 'smokeOrFire'],
    });
    const off = hear({ kind: 'reply', id: 'allOff', text: 'all is off', confidence: 0.9 });
    expect(() => planned(off, by('second'), scene())).toThrow(
      expect.objectContaining({ code: 'notYourRole' }),
    );
    await done(off);
    await silent();
    // The cause is asked of the technician.
    await done(hear({ kind: 'reply', id: 'no', text: 'wrong', confidence: 0.9 }));
    await silent();
    expect(bench.key()).toBe('stopped.makingSafe');
  });

  test('of fire, injury or an engine that runs on counts whatever was asked when it was said, and while an answer is being carried out', async () => {
    bench.session.receive({ type: 'stop' }, 'second', 'touch');
    await bench.session.settled();
    await silent();
    const urgent = [
      hear({ kind: 'reply', id: 'stillRunning', text: 'still running', confidence: 0.9 }),
      hear({ kind: 'reply', id: 'causeSmokeOrFire', text: 'fire', confidence: 0.9 }),
      say('someone is hurt'),
    ];
    for (const turn of ['another', null])
      for (const role of ['technician', 'second'] as const) {
        const late = scene({ turn });
        for (const deed of urgent) expect(() => planned(deed, by(role), late)).not.toThrow();
        for (const deed of [
          say('all is off'),
          hear({ kind: 'reply', id: 'allOff', text: 'all is off', confidence: 0.9 }),
        ])
          expect(() => planned(deed, by(role), late)).toThrow(expect.objectContaining({ code: 'tooLate' }));
      }
    // Once the cause is asked for, what is typed is an answer to that question only; what is heard calls for help.
    await bench.type('all is off');
    await bench.type('correct');
    expect(bench.key()).toBe('stopped.askingCause');
    await silent();
    const [, heard, typed] = urgent.map(
      deed => () => planned(deed, by('technician'), scene({ turn: 'another' })),
    );
    expect(heard).not.toThrow();
    expect(typed).toThrow(expect.objectContaining({ code: 'tooLate' }));
  });

  test('of fire, injury or an engine that runs on counts from a technician whose device does not lead, and nothing else does', async () => {
    bench.session.receive({ type: 'stop' }, 'second', 'touch');
    await bench.session.settled();
    await silent();
    const following = scene({ leads: false });
    for (const deed of [
      say('all is off'),
      hear({ kind: 'reply', id: 'notYet', text: 'not yet', confidence: 1 }),
    ])
      expect(() => planned(deed, by('technician'), following)).toThrow(
        expect.objectContaining({ code: 'notTheOwner' }),
      );
    const urgent = hear({ kind: 'reply', id: 'causeSmokeOrFire', text: 'fire', confidence: 0.9 });
    expect(() => planned(say('fire'), by('technician'), following)).not.toThrow();
    await done(urgent, 'technician', following);
    expect(bench.session.moment.context.stop).toMatchObject({ cause: 'smokeOrFire' });
    expect(await recorded()).toEqual({ by: 'technician', via: 'voice' });
    for (const deed of [urgent, say('fire')])
      expect(() => planned(deed, by('supervisor'), following)).toThrow(
        expect.objectContaining({ code: 'notYourRole' }),
      );
  });

  test('of a number counts on its steps and within its range, as it is asked for', async () => {
    await goUntil(bench, 'job.ambient.asking');
    await silent();
    const at =
      (value: number, id = 'ambientTemperature') =>
      () =>
        planned(
          hear({ kind: 'number', id, value, text: String(value), confidence: 1 }),
          by('technician'),
          scene(),
        );
    expect(at(41)).not.toThrow();
    expect(at(41 + 1e-9)).not.toThrow();
    for (const value of [41.5, 1e6, -1e6])
      expect(at(value)).toThrow(expect.objectContaining({ code: 'notNow' }));
    expect(at(41, 'coldestNight')).toThrow(expect.objectContaining({ code: 'notNow' }));
    const { moment, parts } = bench.session;
    const { min, max, step } = grammarOf(moment, parts.language, parts.units, 'voice').number ?? NO_NUMBER;
    expect([at(min), at(max)].map(plan => plan())).toEqual([expect.any(Function), expect.any(Function)]);
    for (const beyond of [min - step, max + step]) expect(at(beyond)).toThrow();
  });
});

describe('Fire or injury that a device heard', () => {
  const fire = hear({ kind: 'reply', id: 'causeSmokeOrFire', text: 'fire', confidence: 0.9 });
  const stops = { type: 'stop', cause: 'smokeOrFire', via: 'voice' };

  /** In a stop whose cause is asked for, of the technician, in a bay that is silent. */
  async function causeIsAsked() {
    bench.session.receive({ type: 'stop' }, 'second', 'touch');
    await bench.session.settled();
    await bench.type('all is off');
    await bench.type('correct');
    expect(bench.key()).toBe('stopped.askingCause');
    await silent();
  }

  test.each(['technician', 'second'] as const)(
    'stops where nothing of it is asked, told by the %s',
    async role => {
      await silent();
      await done(fire, role);
      expect(bench.key()).toBe('stopped.makingSafe');
      expect(await lastEvent()).toMatchObject({ ...stops, by: role });
    },
  );

  test('is an answer of the one who is asked for the cause, once that has been said', async () => {
    await causeIsAsked();
    await done(fire);
    expect(await lastEvent()).toMatchObject({ type: 'reply', id: 'causeSmokeOrFire', by: 'technician' });
  });

  test.each<readonly [string, Role, Partial<Parameters<typeof scene>[0]>]>([
    ['at another turn', 'technician', { turn: 'another' }],
    ['of somebody else', 'second', {}],
    ['at a device that does not lead', 'technician', { leads: false }],
  ])('is a stop anew %s', async (_, role, at) => {
    await causeIsAsked();
    await done(fire, role, scene(at));
    expect(await lastEvent()).toMatchObject({ ...stops, by: role });
  });

  test('is a stop anew while the tool speaks', async () => {
    await causeIsAsked();
    bench.session.mention('help');
    for (let turn = 0; turn < 20 && !bench.session.hearsOnlyStop; turn += 1) await allElse();
    expect(bench.session.hearsOnlyStop).toBe(true);
    await done(fire);
    expect(await lastEvent()).toMatchObject({ ...stops, by: 'technician' });
  });

  test('is a stop anew where the question has not been said yet', async () => {
    bench.session.receive({ type: 'stop' }, 'second', 'touch');
    await bench.session.settled();
    await silent();
    const disk = slowDisk(bench.record);
    planned(say('all is off'), by('technician'), scene())();
    await allElse();
    expect(bench.key()).toBe('stopped.askingCause');
    expect([bench.session.isAsked, bench.session.hearsOnlyStop]).toEqual([false, false]);
    planned(fire, by('technician'), scene())();
    disk.release();
    await bench.session.settled();
    expect(await lastEvent()).toMatchObject({ ...stops, by: 'technician' });
  });

  test('is told while everything is made safe, at any turn and by either of them', async () => {
    bench.session.receive({ type: 'stop' }, 'second', 'touch');
    await bench.session.settled();
    await silent();
    await done(fire, 'second', scene({ turn: null, secondHasDevice: true }));
    expect(await lastEvent()).toMatchObject({ type: 'reply', id: 'causeSmokeOrFire', by: 'second' });
  });
});

describe('What a typed line calls for help for', () => {
  const calls = (text: string) => callTyped(bench.session, { do: 'say', turn: 't', text, via: 'touch' });

  test('is known of a stop that names it, and nothing of any other line', () => {
    expect(['fire', 'someone is hurt', 'stop', 'card is right', '  '].map(calls)).toEqual([
      'smokeOrFire',
      'someoneHurt',
      undefined,
      undefined,
      undefined,
    ]);
  });

  test('is known where it is an answer as well', async () => {
    bench.session.receive({ type: 'stop' }, 'second', 'touch');
    await bench.session.settled();
    expect(['fire', 'someone is hurt', 'all is off'].map(calls)).toEqual([
      'smokeOrFire',
      'someoneHurt',
      undefined,
    ]);
  });

  test('is no call of the supervisor’s, also while they are asked to sign', async () => {
    await goUntil(bench, 'signOff.sign.asking');
    expect(() => planned(say('fire'), by('supervisor'), scene({ supervisorHasDevice: true }))).toThrow(
      expect.objectContaining({
        code: 'notYourRole',
        message: 'Whoever is at the engine calls for help; from here STOP stops it.',
      }),
    );
  });
});

describe('The clear of the second person', () => {
  const clear: SessionDeed = { do: 'clear', turn: 't' };

  test('is refused where it is not asked for', () => {
    expect(clearOf(bench.session.moment, true)).toEqual({
      state: 'notAsked',
      untilSessionMs: null,
      ownDeviceOnly: true,
    });
    expect(() => planned(clear, by('second'), scene())).toThrow(
      expect.objectContaining({ code: 'notNow', message: 'A clear is not asked for now.' }),
    );
  });

  test('is needed before cranking, is read back, and then holds for its seconds', async () => {
    await goUntil(bench, 'noFuelCrank.untilPressure.askingClear');
    const { session } = bench;
    expect(clearOf(session.moment, false)).toEqual({
      state: 'needed',
      untilSessionMs: null,
      ownDeviceOnly: false,
    });
    expect(questionOf(session.moment, { second: true, supervisor: false })).toMatchObject({
      addressed: 'second',
      ownDeviceOnly: true,
    });
    const own = scene({ secondHasDevice: true });
    expect(() => planned(clear, by('technician'), own)).toThrow(
      expect.objectContaining({ code: 'notYourRole' }),
    );
    await done(clear, 'second', own);
    expect(await recorded()).toEqual({ by: 'second', via: 'touch' });
    for (let times = 0; session.moment.context.clearAtMs === null && times < 3; times += 1) {
      expect(clearOf(session.moment, true).state).toBe('needed');
      await done(say('correct'), 'second', own);
    }
    const given = clearOf(session.moment, true);
    expect(given).toMatchObject({ state: 'given', ownDeviceOnly: true });
    expect(given.untilSessionMs).toBeGreaterThan(
      session.moment.context.clearAtMs ?? Number.POSITIVE_INFINITY,
    );
  });

  test('is not asked for without a session', () => {
    expect(clearOf(null, false)).toEqual({ state: 'notAsked', untilSessionMs: null, ownDeviceOnly: false });
  });
});

describe('Whose a stop is', () => {
  test('is that of whoever holds the device', () => {
    for (const role of ['technician', 'second', 'supervisor'] as const)
      expect(speaksFor(by(role), scene())).toBe(role);
  });

  test('is that of whoever holds it also where somebody else is asked', async () => {
    await goUntil(bench, 'noFuelCrank.untilPressure.askingClear');
    expect(questionOf(bench.session.moment, { second: false, supervisor: false }).addressed).toBe('second');
    for (const role of ['technician', 'second'] as const) expect(speaksFor(by(role), scene())).toBe(role);
  });

  test('is that of whoever was asked to try the word out, where one device is there for both', async () => {
    await goUntil(bench, 'stopped.drillGoesOn');
    expect(speaksFor(by('technician'), scene())).toBe('second');
    expect(speaksFor(by('technician'), scene({ secondHasDevice: true }))).toBe('technician');
    expect(speaksFor(by('second'), scene({ secondHasDevice: true }))).toBe('second');
    expect(speaksFor(by('supervisor'), scene())).toBe('supervisor');
  });
});

describe('What is asked of the supervisor', () => {
  test('is answered at the technician’s device only where theirs is not there', async () => {
    await goUntil(bench, 'signOff.sign.asking');
    const signed = say('i sign');
    expect(() => planned(signed, by('technician'), scene({ supervisorHasDevice: true }))).toThrow(
      expect.objectContaining({ code: 'notYourRole' }),
    );
    expect(() => planned(signed, by('supervisor'), scene({ supervisorHasDevice: true }))).not.toThrow();
    expect(() => planned(signed, by('technician'), scene())).not.toThrow();
  });
});

describe('The name of a question', () => {
  test('changes when another thing is asked or waits for its read-back, and at no other time', async () => {
    let entries = 7;
    const turns = new Turns('s', () => entries);
    turns.look(bench.session.moment);
    const first = turns.name;
    expect(first).toBe('s/7');
    entries = 9;
    turns.look(bench.session.moment);
    expect(turns.name).toBe(first);
    await bench.type('card is right');
    turns.look(bench.session.moment);
    expect(turns.name).toBe('s/9');
    await goUntil(bench, 'fill.oilQuantity.asking');
    turns.look(bench.session.moment);
    const amount = Number(goodReply(bench));
    await hearNumber('oilQuantity', amount);
    expect(bench.key()).toBe('fill.oilQuantity.readingBack');
    entries = 20;
    turns.look(bench.session.moment);
    expect(turns.name).toBe('s/20');
    entries = 21;
    await hearNumber('oilQuantity', amount + 1);
    turns.look(bench.session.moment);
    expect(turns.name).toBe('s/21');
  });

  test('changes where a danger takes the place of what is read back: "correct" to the one before it confirms nothing', async () => {
    let entries = 7;
    const turns = new Turns('s', () => entries);
    await goUntil(bench, 'warmUp.watch.asking');
    await hearNumber('coolantTemperature', 107);
    expect(bench.key()).toBe('warmUp.watch.readingBackValue');
    turns.look(bench.session.moment);
    expect(turns.name).toBe('s/7');
    entries = 9;
    await hearNumber('coolantTemperature', 266);
    expect(bench.key()).toBe('warmUp.watch.readingBackValue');
    expect(bench.session.moment.context.pending).toMatchObject({ stops: 'overheating' });
    turns.look(bench.session.moment);
    expect(turns.name).toBe('s/9');
  });
});

describe('The session of a bay', () => {
  test('is the one that goes on, and none before it has begun or when it is over', async () => {
    const run = { session: bench.session } as Run;
    expect(running(run)).toBe(run);
    expect(() => running(null)).toThrow(
      expect.objectContaining({ code: 'notNow', message: 'No session has begun in this bay.' }),
    );
    await goUntil(bench);
    expect(() => running(run)).toThrow(
      expect.objectContaining({ code: 'notNow', message: 'The session of this bay is over.' }),
    );
  });
});
