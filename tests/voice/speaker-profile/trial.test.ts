import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Grammar, Heard, SoundRecognizer } from '../../../src/voice/ports.ts';
import { adaptedTo } from '../../../src/voice/speaker-profile/adapted-ear.ts';
import {
  shipped,
  shippedCertainty,
  speakerProfileSchema,
} from '../../../src/voice/speaker-profile/profile.ts';
import {
  bestBound,
  candidates,
  choose,
  gainFor,
  isBetter,
  type Outcome,
  type Trial,
  tallyOf,
  trialOf,
} from '../../../src/voice/speaker-profile/trial.ts';

const grammar: Grammar = {
  key: 'test',
  stop: ['stop'],
  replies: [
    { id: 'yes', wordings: ['correct', 'yes'] },
    { id: 'no', wordings: ['wrong'] },
  ],
  number: { id: 'oilPressure', leads: ['oil pressure'], units: [], min: 0, max: 100, step: 1 },
};
const reply = (id: string, confidence = 0.9): Heard => ({ kind: 'reply', id, text: id, confidence });
const number = (value: number): Heard => ({
  kind: 'number',
  id: 'oilPressure',
  value,
  text: '',
  confidence: 0.9,
});
const outcomeOf = (text: string, ...heard: Heard[]) => trialOf({ text, grammar }, heard).outcome;

describe('A prompt that was read', () => {
  it('is right when its meaning was heard, whatever the wording', () => {
    expect(outcomeOf('correct', reply('yes'))).toBe('right');
    expect(outcomeOf('oil pressure four two', number(42))).toBe('right');
    expect(outcomeOf('stop', { kind: 'stop', text: 'stop' })).toBe('right');
  });

  it('is wrong when another meaning was heard, also a stop, also beside the right one', () => {
    expect(outcomeOf('correct', reply('no'))).toBe('wrong');
    expect(outcomeOf('oil pressure four two', number(52))).toBe('wrong');
    expect(outcomeOf('correct', { kind: 'stop', text: 'stop' })).toBe('wrong');
    expect(outcomeOf('stop', reply('yes'))).toBe('wrong');
    expect(outcomeOf('correct', reply('yes'), reply('no'))).toBe('wrong');
  });

  it('is unclear when nothing counted', () => {
    expect(outcomeOf('correct')).toBe('unclear');
    expect(outcomeOf('correct', { kind: 'unclear', text: '', reason: 'lowConfidence' })).toBe('unclear');
  });
});

const adaptationSchema = speakerProfileSchema.shape.adaptation;

const trial = (outcome: Outcome, certainty: number): Trial => ({ outcome, certainty });
const anyTrial = fc
  .record({
    outcome: fc.constantFrom<Outcome[]>('right', 'unclear', 'wrong'),
    certainty: fc.double({ min: shippedCertainty, max: 1, noNaN: true }),
  })
  .map(({ outcome, certainty }) => trial(outcome, outcome === 'unclear' ? 0 : certainty));
const trials = fc.array(anyTrial, { maxLength: 20 });

describe("A person's own bound", () => {
  it('rises above what was heard wrong, where little is lost by it', () => {
    const heard = [trial('right', 0.99), trial('right', 0.95), trial('right', 0.84), trial('wrong', 0.86)];
    expect(bestBound(heard)).toBe(0.87);
    expect(tallyOf(heard, 0.87)).toEqual({ right: 2, unclear: 2, wrong: 0 });
  });

  it('stays where nothing is won', () => {
    expect(bestBound([])).toBe(shippedCertainty);
    expect(bestBound([trial('right', 0.85), trial('right', 0.99)])).toBe(shippedCertainty);
    expect(bestBound([trial('wrong', 0.999)])).toBe(shippedCertainty);
  });

  it('is never below the shipped one nor above what a file may hold, and never lets more through', () => {
    fc.assert(
      fc.property(trials, heard => {
        const bound = bestBound(heard);
        expect(bound).toBeGreaterThanOrEqual(shippedCertainty);
        expect(adaptationSchema.safeParse({ ...shipped, leastCertainty: bound }).success).toBe(true);
        const [after, before] = [tallyOf(heard, bound), tallyOf(heard, shippedCertainty)];
        expect(after.wrong).toBeLessThanOrEqual(before.wrong);
        expect(after.right + after.unclear + after.wrong).toBe(heard.length);
      }),
    );
  });
});

describe('What is chosen', () => {
  const louder = { ...shipped, gainDb: 6 };
  const good = [trial('right', 0.99), trial('right', 0.99)];
  const poor = [trial('unclear', 0), trial('right', 0.99)];

  it('is what makes the held-out prompts better too', () => {
    const choice = choose({ adaptation: shipped, training: poor, heldOut: poor }, [
      { adaptation: louder, training: good, heldOut: good },
    ]);
    expect(choice.adaptation).toEqual(louder);
    expect(choice.heldOut).toEqual({
      before: { right: 1, unclear: 1, wrong: 0 },
      after: { right: 2, unclear: 0, wrong: 0 },
    });
  });

  it('is nothing, where only the prompts that it was chosen on are better', () => {
    for (const heldOut of [poor, [trial('wrong', 0.99), trial('right', 0.99)]]) {
      const choice = choose({ adaptation: shipped, training: poor, heldOut: poor }, [
        { adaptation: louder, training: good, heldOut },
      ]);
      expect(choice.adaptation).toEqual(shipped);
      expect(choice.heldOut.after).toEqual(choice.heldOut.before);
    }
  });

  it('never hears more wrong on the held-out prompts, and is always a profile that may be loaded', () => {
    const tried = fc.record({ training: trials, heldOut: trials });
    fc.assert(
      fc.property(tried, fc.array(tried, { maxLength: 3 }), (before, others) => {
        const settings = candidates(-45);
        const choice = choose(
          { adaptation: shipped, ...before },
          others.map((other, i) => ({ adaptation: settings[i + 1] ?? louder, ...other })),
        );
        expect(choice.heldOut.after.wrong).toBeLessThanOrEqual(choice.heldOut.before.wrong);
        const levels = { speechDbfs: -45, noiseDbfs: -70, clipped: 0 };
        const profile = {
          schema: 'first-fire-speaker/1',
          name: 'Ada',
          measuredAt: '2026-01-02T03:04:05.000Z',
          language: 'en',
          levels,
          ...choice,
        };
        expect(speakerProfileSchema.safeParse(profile).success).toBe(true);
      }),
    );
  });

  it('is not better for being right more often, when more is wrong', () => {
    expect(isBetter({ right: 9, unclear: 0, wrong: 1 }, { right: 2, unclear: 8, wrong: 0 })).toBe(false);
  });
});

it('recommends gain for a faint voice only, in steps of 3 dB up to 18', () => {
  expect([-20, -24, -26, -27, -40, -90].map(gainFor)).toEqual([0, 0, 0, 3, 15, 18]);
  expect(gainFor(Number.NaN)).toBe(0);
});

describe('A file that asks for less care than is shipped', () => {
  it('is refused', () => {
    expect(adaptationSchema.safeParse(shipped).success).toBe(true);
    for (const change of [
      { leastCertainty: 0.8 },
      { leastCertainty: 0.98 },
      { leastCertainty: Number.NaN },
      { trailingSilenceMs: 100 },
      { gainDb: 40 },
      { gainDb: -6 },
      { floor: 0 },
    ])
      expect(adaptationSchema.safeParse({ ...shipped, ...change }).success).toBe(false);
  });
});

describe('An ear that is adapted to somebody', () => {
  function rig(adaptation: { gainDb: number; leastCertainty: number }) {
    let tell: (heard: Heard) => void = () => {};
    const peaks: number[] = [];
    const inner: SoundRecognizer = {
      listen() {},
      onlyStop() {},
      onHeard(handler) {
        tell = handler;
      },
      onLevel() {},
      async hear({ samples }) {
        peaks.push(Math.max(...samples));
      },
      close() {},
    };
    const heard: Heard[] = [];
    const ear = adaptedTo(adaptation, inner);
    ear.onHeard(each => heard.push(each));
    return { ear, heard, peaks, tell: (each: Heard) => tell(each) };
  }

  it('asks again below the bound, also where the certainty is no number, and passes every stop on', () => {
    const { heard, tell } = rig({ gainDb: 0, leastCertainty: 0.9 });
    tell(reply('yes', 0.89));
    tell(reply('yes', Number.NaN));
    tell(reply('yes', 0.9));
    tell({ kind: 'stop', text: 'stop' });
    expect(heard.map(({ kind }) => kind)).toEqual(['unclear', 'unclear', 'reply', 'stop']);
  });

  it('hears louder, and never beyond full scale', async () => {
    const { ear, peaks } = rig({ gainDb: 6, leastCertainty: shippedCertainty });
    await ear.hear({ samples: Float32Array.of(0.1), sampleRateHz: 16_000 });
    await ear.hear({ samples: Float32Array.of(0.9), sampleRateHz: 16_000 });
    expect(peaks[0]).toBeCloseTo(0.1995, 3);
    expect(peaks[1]).toBe(1);
  });
});
