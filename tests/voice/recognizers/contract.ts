import { beforeEach, describe, expect, it, onTestFinished } from 'vitest';
import type { Grammar, Heard, Recognizer } from '../../../src/voice/ports.ts';

/** A recognizer, and how a person makes themselves heard by it. */
export interface Listener {
  readonly recognizer: Recognizer;
  /** Says or types the text and waits until it has been dealt with. */
  say(text: string): Promise<void>;
}

export const grammar: Grammar & Required<Pick<Grammar, 'number'>> = {
  key: 'fill.coolant.asking',
  stop: ['stop', 'shut it down'],
  replies: [
    { id: 'yes', wordings: ['correct', 'affirmative'] },
    { id: 'full', wordings: ['coolant full', 'coolant is full'] },
  ],
  number: {
    id: 'oilPressure',
    leads: ['oil pressure'],
    units: ['pounds'],
    min: 0,
    max: 120,
    step: 1,
  },
};

const { number: pressure, ...withoutNumber } = grammar;

/** Notes what a recognizer reports from now on, until the test is over. */
export function reportsOf(recognizer: Recognizer): readonly Heard[] {
  const reports: Heard[] = [];
  recognizer.onHeard(heard => reports.push(heard));
  onTestFinished(() => recognizer.close());
  return reports;
}

/** What every recognizer does, whatever it listens to. */
export function recognizerContract(name: string, create: () => Promise<Listener>): void {
  describe(`a recognizer (${name})`, () => {
    let listener: Listener;
    let reports: readonly Heard[];

    beforeEach(async () => {
      listener = await create();
      listener.recognizer.listen(grammar);
      reports = reportsOf(listener.recognizer);
    });

    it.each([
      ['correct', 'yes'],
      ['coolant full', 'full'],
      ['coolant is full', 'full'],
    ])('reports "%s" as the reply "%s"', async (text, id) => {
      await listener.say(text);
      expect(reports).toEqual([{ kind: 'reply', id, text, confidence: expect.any(Number) }]);
    });

    it.each([
      ['oil pressure forty two', 42],
      ['one hundred and twelve pounds', 112],
      ['six eight', 68],
    ])('reports "%s" with the value %d', async (text, value) => {
      await listener.say(text);
      expect(reports).toEqual([
        { kind: 'number', id: 'oilPressure', value, text, confidence: expect.any(Number) },
      ]);
    });

    it('is sure to a degree between 0 and 1', async () => {
      await listener.say('correct');
      const [report] = reports;
      expect(report?.kind === 'reply' && report.confidence).toBeGreaterThan(0);
      expect(report?.kind === 'reply' && report.confidence).toBeLessThanOrEqual(1);
    });

    it.each(['the weather is lovely this morning', 'give me the big hammer'])(
      'reports "%s", which nobody asked for, as unclear',
      async text => {
        await listener.say(text);
        expect(reports).toMatchObject([{ kind: 'unclear' }]);
      },
    );

    it.each(['stop', 'shut it down', 'please stop the engine now', 'oil pressure stop'])(
      'reports stop once for "%s"',
      async text => {
        await listener.say(text);
        expect(reports).toMatchObject([{ kind: 'stop' }]);
      },
    );

    it.each<[string, Grammar]>([
      ['nothing is asked for', { ...withoutNumber, replies: [] }],
      ['only a number is asked for', { ...grammar, replies: [] }],
      ['only replies are asked for', withoutNumber],
    ])('reports stop where %s', async (_, asked) => {
      listener.recognizer.listen(asked);
      await listener.say('stop');
      expect(reports).toMatchObject([{ kind: 'stop' }]);
    });

    it('reports what was asked for last, and not what was asked for before', async () => {
      listener.recognizer.listen({ ...grammar, replies: [{ id: 'hot', wordings: ['coolant hot'] }] });
      await listener.say('coolant hot');
      await listener.say('affirmative');
      expect(reports).toMatchObject([{ kind: 'reply', id: 'hot' }, { kind: 'unclear' }]);
    });

    it('takes a number only with its lead, where one is needed', async () => {
      const number = { ...pressure, leads: ['second'], leadNeeded: true };
      listener.recognizer.listen({ ...grammar, number });
      await listener.say('second forty two');
      await listener.say('forty two');
      expect(reports).toMatchObject([{ kind: 'number', value: 42 }, { kind: 'unclear' }]);
    });

    it('reports only stop while the tool speaks, and everything afterwards', async () => {
      listener.recognizer.onlyStop(true);
      for (const text of ['correct', 'forty two', 'give me the big hammer']) await listener.say(text);
      expect(reports).toEqual([]);
      await listener.say('stop');
      expect(reports).toMatchObject([{ kind: 'stop' }]);
      listener.recognizer.onlyStop(false);
      await listener.say('correct');
      expect(reports).toMatchObject([{ kind: 'stop' }, { kind: 'reply', id: 'yes' }]);
    });

    it('reports nothing before it is told what to listen for', async () => {
      const idle = await create();
      const nothing = reportsOf(idle.recognizer);
      await idle.say('correct');
      expect(nothing).toEqual([]);
    });

    it('reports nothing once it is closed, and may be told anything', async () => {
      listener.recognizer.close();
      listener.recognizer.listen({ ...grammar, key: 'later' });
      listener.recognizer.onlyStop(true);
      listener.recognizer.onlyStop(false);
      for (const text of ['correct', 'stop']) await listener.say(text);
      listener.recognizer.close();
      expect(reports).toEqual([]);
    });

    it('refuses a number that nobody can listen for, and goes on with what it had', async () => {
      const number = { ...pressure, max: Number.NaN };
      expect(() => listener.recognizer.listen({ ...grammar, number })).toThrow(
        /^Number slot "oilPressure" .*\.$/,
      );
      await listener.say('correct');
      expect(reports).toMatchObject([{ kind: 'reply', id: 'yes' }]);
    });
  });
}
