import { describe, expect, it, vi } from 'vitest';
import type { Person, Via } from '../../../machines/vocabulary.ts';
import { readLog } from '../../../src/record/index.ts';
import type { EventBody } from '../../../src/session/hearing.ts';
import { joinVoices, surely } from '../../../src/session/who-speaks/join-voices.ts';
import { goUntil, rig } from '../../helpers/session-rig.ts';

const technician = Float32Array.of(1, 0, 0);
const second = Float32Array.of(0, 1, 0);
/** Nearer to the technician's by 0.08: of one such 0.82 sure, of several together 0.92. */
const likeTechnician = Float32Array.of(0.54, 0.46, 0.705);

const yes: EventBody = { type: 'reply', id: 'yes' };

/** A session at its first question, and what is put beside an answer there. */
async function joined(practice = false) {
  const run = await rig();
  const attach = vi.spyOn(run.session, 'attachVoices');
  const link = joinVoices(run.session, practice);
  await run.session.begin();
  const beside = (body: EventBody, by: Person, via: Via = 'voice') =>
    attach.mock.calls[0]?.[0](body, by, via);
  /** Said in a voice, and whose it was told to be. */
  const say = (voice: Float32Array, by: Person, microphone?: string, body = yes) => {
    link.hears({ voice, stopped: false }, microphone);
    const told = beside(body, by);
    return told && 'voice' in told ? told.voice?.of : undefined;
  };
  const teach = (microphone?: string) => {
    for (let times = 0; times < 3; times += 1) {
      say(technician, 'technician', microphone);
      say(second, 'second', microphone);
    }
  };
  const learned = async () => {
    await run.session.settled();
    const { entries } = await readLog(run.path);
    return entries.filter(({ kind }) => kind === 'voiceLearned').map(({ data }) => data.by);
  };
  return { run, link, beside, say, teach, learned };
}

describe('a voice is sure', () => {
  it('from 0.9 on at the first utterance, from 0.55 on at several together', () => {
    expect(surely(null, 1)).toBeNull();
    expect([0.8999, 0.9].map(certainty => surely({ certainty }, 1) !== null)).toEqual([false, true]);
    expect([0.5499, 0.55].map(certainty => surely({ certainty }, 2) !== null)).toEqual([false, true]);
  });
});

describe('two voices at one microphone', () => {
  it('are told from the third utterance of each on, and that they are known stands on the record once', async () => {
    const { say, teach, learned } = await joined();
    expect(say(technician, 'technician')).toBeUndefined();
    teach();
    expect(say(technician, 'technician')).toBe('technician');
    expect(say(second, 'second')).toBe('second');
    teach();
    expect(await learned()).toEqual(['technician', 'second']);
  });

  it('stand beside replies and numbers, with how sure that is, and beside nothing else', async () => {
    const { say, teach, beside, link } = await joined();
    teach();
    link.hears({ voice: second, stopped: false });
    expect(beside(yes, 'second')).toEqual({ ...yes, voice: { of: 'second', certainty: expect.any(Number) } });
    expect(say(second, 'second', undefined, { type: 'value', quantity: 'altitude', si: 3 })).toBe('second');
    for (const body of [{ type: 'hold' }, { type: 'stop' }] as const)
      expect(say(second, 'second', undefined, body)).toBeUndefined();
  });

  it('are told in whoever’s name something was said, and teach nothing of another', async () => {
    const { say, teach } = await joined();
    teach();
    say(technician, 'technician');
    for (let times = 0; times < 30; times += 1) expect(say(technician, 'second')).toBe('technician');
    expect(say(second, 'second')).toBe('second');
  });

  it('may be one in both parts at an engine to practise on', async () => {
    const { say, teach } = await joined(true);
    teach();
    expect(say(technician, 'second')).toBeUndefined();
    expect(say(second, 'second')).toBe('second');
  });

  it('are not told of the supervisor, nor by keys and touch', async () => {
    const { say, teach, beside, link } = await joined();
    teach();
    expect(say(second, 'supervisor')).toBeUndefined();
    for (const via of ['keys', 'touch'] as const) {
      link.hears({ voice: second, stopped: false });
      expect(beside(yes, 'second', via)).toEqual(yes);
    }
  });

  it('belong to what is said within 0.3 s, once, and not where something was in no voice', async () => {
    const { run, teach, beside, link } = await joined();
    teach();
    const heardAfter = (ms: number) => {
      link.hears({ voice: second, stopped: false });
      run.clock.advance(ms);
      return beside(yes, 'second');
    };
    expect(heardAfter(300)).toHaveProperty('voice');
    expect(beside(yes, 'second')).toEqual(yes);
    expect(heardAfter(301)).toEqual(yes);
    link.hears({ voice: second, stopped: false });
    link.hears(null);
    expect(beside(yes, 'second')).toEqual(yes);
  });

  it('are not known at another microphone', async () => {
    const { say, teach } = await joined();
    teach('bench');
    expect(say(second, 'second', 'bench')).toBe('second');
    expect(say(second, 'second', 'door')).toBeUndefined();
    expect(say(second, 'second')).toBeUndefined();
  });

  describe('that are unsure at first', () => {
    /** Both are known so well that one utterance more changes little of either. */
    const wellKnown = async () => {
      const both = await joined();
      for (let times = 0; times < 8; times += 1) both.teach();
      both.say(second, 'second');
      return both;
    };

    it('are told by several utterances of one person in one step', async () => {
      const { say } = await wellKnown();
      expect(say(likeTechnician, 'technician')).toBeUndefined();
      expect(say(likeTechnician, 'technician')).toBe('technician');
    });

    it('are no part of what is said after somebody else has spoken', async () => {
      const { say } = await wellKnown();
      expect(say(likeTechnician, 'technician')).toBeUndefined();
      say(second, 'second');
      expect(say(likeTechnician, 'technician')).toBeUndefined();
    });
  });
});

describe('an emergency word', () => {
  /** A word and the voice that it was in, so much later; three of them, and whether they were learned. */
  async function learns(state: string, afterMs: number, stopped = true) {
    const { run, link, beside, learned } = await joined();
    await goUntil(run, state);
    for (let times = 0; times < 3; times += 1) {
      beside({ type: 'stop' }, 'technician');
      run.clock.advance(afterMs);
      link.hears({ voice: technician, stopped });
    }
    return (await learned()).length > 0;
  }
  const DRILL = 'job.stopTechnician.asking';

  it('that is tried out teaches a voice, where that comes within four seconds', async () => {
    expect(await learns(DRILL, 4000)).toBe(true);
    expect(await learns(DRILL, 4001)).toBe(false);
    expect(await learns(DRILL, 0, false)).toBe(false);
  });

  it('at any other moment may have been anybody’s', async () => {
    expect(await learns('job.protection.asking', 0)).toBe(false);
  });

  it('teaches once: what is heard behind it belongs to nobody', async () => {
    const { run, link, beside, learned } = await joined();
    await goUntil(run, DRILL);
    beside({ type: 'stop' }, 'technician');
    for (let times = 0; times < 3; times += 1) link.hears({ voice: technician, stopped: true });
    expect(await learned()).toEqual([]);
  });
});
