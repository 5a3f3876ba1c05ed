import { describe, expect, it } from 'vitest';
import { synthesize } from '../../../audio-fixtures/synthesize.ts';
import type { EarLevel, Grammar, Heard, Pcm, SoundRecognizer } from '../../../src/voice/ports.ts';
import { tone } from '../../helpers/tones.ts';
import { grammar, recognizerContract, reportsOf } from './contract.ts';

const spoken = (text: string): Pcm => synthesize('flite-slt', text);

/** A part of a sound, from and to the given share of it. */
const part = ({ samples, sampleRateHz }: Pcm, from: number, to: number): Pcm => ({
  samples: samples.slice(from * samples.length, to * samples.length),
  sampleRateHz,
});

const heatQuestion: Grammar = {
  ...grammar,
  key: 'heat.asking',
  replies: [
    { id: 'heaterOn', wordings: ['heater on'] },
    { id: 'yes', wordings: ['correct', 'affirmative'] },
  ],
};

/** What every recognizer does that is fed sound; it hears a voice made from recorded speech. */
export function soundRecognizerContract(name: string, create: () => Promise<SoundRecognizer>): void {
  recognizerContract(name, async () => {
    const recognizer = await create();
    return { recognizer, say: text => recognizer.hear(spoken(text)) };
  });

  async function ear(asked: Grammar = grammar): Promise<{
    recognizer: SoundRecognizer;
    reports: readonly Heard[];
    /** Speaks the text, and does something in the middle of it. */
    sayAround(text: string, inTheMiddle: () => void): Promise<void>;
  }> {
    const recognizer = await create();
    const reports = reportsOf(recognizer);
    recognizer.listen(asked);
    return {
      recognizer,
      reports,
      async sayAround(text, inTheMiddle) {
        const sound = spoken(text);
        await recognizer.hear(part(sound, 0, 0.5));
        inTheMiddle();
        await recognizer.hear(part(sound, 0.5, 1));
      },
    };
  }

  describe(`an utterance, while it is spoken (${name})`, () => {
    it('is no answer to a question that changed in the middle of it', async () => {
      const { recognizer, reports, sayAround } = await ear();
      await sayAround('affirmative', () => recognizer.listen(heatQuestion));
      expect(reports).toMatchObject([{ kind: 'unclear' }]);
      await recognizer.hear(spoken('heater on'));
      expect(reports).toMatchObject([{ kind: 'unclear' }, { kind: 'reply', id: 'heaterOn' }]);
    });

    it('is no answer when the question changed back and forth in the middle of it', async () => {
      const { recognizer, reports, sayAround } = await ear();
      await sayAround('affirmative', () => {
        recognizer.listen(heatQuestion);
        recognizer.listen(grammar);
      });
      expect(reports).toMatchObject([{ kind: 'unclear' }]);
    });

    it('counts when the same question is put again in the middle of it', async () => {
      const { recognizer, reports, sayAround } = await ear();
      await sayAround('affirmative', () => recognizer.listen(structuredClone(grammar)));
      expect(reports).toMatchObject([{ kind: 'reply', id: 'yes' }]);
    });

    it('stops everything even if the question changed in the middle of it', async () => {
      const { recognizer, reports, sayAround } = await ear();
      await sayAround('please stop the engine', () => recognizer.listen(heatQuestion));
      expect(reports).toMatchObject([{ kind: 'stop' }]);
    });

    it('is no answer when the tool began to speak, or ceased to, in the middle of it', async () => {
      const { recognizer, reports, sayAround } = await ear();
      await sayAround('affirmative', () => recognizer.onlyStop(true));
      expect(reports).toEqual([]);
      await sayAround('affirmative', () => recognizer.onlyStop(false));
      expect(reports).toEqual([]);
    });

    it('whose beginning is cut off, since the tool spoke, is no answer to the question before', async () => {
      const { recognizer, reports } = await ear();
      const sound = spoken('coolant full');
      // Early enough that what is left would still be taken for the whole.
      const begun = 0.35;
      recognizer.onlyStop(true);
      await recognizer.hear(part(sound, 0, begun));
      recognizer.listen(heatQuestion);
      recognizer.onlyStop(false);
      await recognizer.hear(part(sound, begun, 1));
      expect(reports).toEqual([]);
    });

    it('reports stop before it has ended', async () => {
      const { recognizer, reports } = await ear();
      await recognizer.hear(part(spoken('stop the engine at once before it breaks'), 0, 0.6));
      expect(reports).toMatchObject([{ kind: 'stop' }]);
    });

    it('may be followed by any change of what is listened for, from whoever is told of it', async () => {
      const { recognizer } = await ear();
      const reports: Heard[] = [];
      recognizer.onHeard(heard => {
        reports.push(heard);
        recognizer.listen(heard.kind === 'reply' && heard.id === 'full' ? heatQuestion : grammar);
        recognizer.onlyStop(true);
        recognizer.onlyStop(false);
      });
      for (const text of ['coolant full', 'heater on', 'stop', 'correct'])
        await recognizer.hear(spoken(text));
      expect(reports.filter(({ kind }) => kind !== 'unclear')).toMatchObject([
        { kind: 'reply', id: 'full' },
        { kind: 'reply', id: 'heaterOn' },
        { kind: 'stop' },
        { kind: 'reply', id: 'yes' },
      ]);
    });

    it('is over for good when the recognizer is closed in the middle of it', async () => {
      const { recognizer, reports, sayAround } = await ear();
      await sayAround('stop', () => recognizer.close());
      recognizer.onlyStop(true);
      recognizer.onlyStop(false);
      expect(reports).toEqual([]);
    });
  });

  describe(`sound for a recognizer (${name})`, () => {
    it('is heard alike in blocks of any length', async () => {
      const sound = spoken('oil pressure forty two');
      const whole = await ear();
      await whole.recognizer.hear(sound);
      for (const blockLength of [160, 1_111]) {
        const { recognizer, reports } = await ear();
        for (let at = 0; at < sound.samples.length; at += blockLength) {
          await recognizer.hear({ ...sound, samples: sound.samples.slice(at, at + blockLength) });
        }
        expect(reports).toEqual(whole.reports);
      }
    });

    it('is dealt with in the order in which it comes, even if nobody waits, but a stop comes first of all', async () => {
      const { recognizer, reports } = await ear();
      await Promise.all(['coolant full', 'stop', 'correct'].map(text => recognizer.hear(spoken(text))));
      const replies = reports.flatMap(heard => (heard.kind === 'reply' ? [heard.id] : []));
      expect(reports.filter(({ kind }) => kind === 'stop')).toHaveLength(1);
      // What was said before a stop may be reported too, unless the stop was noticed before it was worked out.
      expect([['full', 'yes'], ['yes']]).toContainEqual(replies);
    });

    it('at an impossible rate is refused, and the next is heard', async () => {
      const { recognizer, reports } = await ear();
      await expect(recognizer.hear({ ...spoken('correct'), sampleRateHz: 0 })).rejects.toMatchObject({
        code: 'soundUnusable',
      });
      await recognizer.hear(spoken('correct'));
      expect(reports).toMatchObject([{ kind: 'reply', id: 'yes' }]);
    });

    it('of digital silence and clicks means nothing', async () => {
      const { recognizer, reports } = await ear();
      await recognizer.hear({ samples: new Float32Array(32_000), sampleRateHz: 16_000 });
      await recognizer.hear(tone(0.04, { peak: 1 }));
      await recognizer.hear({ samples: new Float32Array(32_000), sampleRateHz: 16_000 });
      expect(reports.filter(({ kind }) => kind !== 'unclear')).toEqual([]);
    });

    // The network has not learned what a beep is: in digital silence it may take one for a stop, which is the safe side.
    it.each([300, 600, 1000, 1400, 2000])('of a tone of %d Hz answers nothing', async frequencyHz => {
      const { recognizer, reports } = await ear();
      await recognizer.hear(tone(2, { frequencyHz }));
      await recognizer.hear({ samples: new Float32Array(32_000), sampleRateHz: 16_000 });
      expect(reports.filter(({ kind }) => kind !== 'unclear' && kind !== 'stop')).toEqual([]);
    });

    it('is shown by its level, its clipping, and whether it is speech', async () => {
      const { recognizer } = await ear();
      const levels: EarLevel[] = [];
      recognizer.onLevel(level => levels.push(level));
      const sound = spoken('coolant full');
      await recognizer.hear(part(sound, 0, 0.1));
      await recognizer.hear(part(sound, 0.1, 0.5));
      await recognizer.hear(tone(0.1, { peak: 2 }));
      expect(levels.map(({ clipping, speech }) => ({ clipping, speech }))).toEqual([
        { clipping: false, speech: false },
        { clipping: false, speech: true },
        { clipping: true, speech: true },
      ]);
      expect(levels[0]?.levelDbfs).toBeLessThan(-80);
      expect(levels[1]?.levelDbfs).toBeGreaterThan(-40);
      recognizer.close();
      await recognizer.hear(sound);
      expect(levels).toHaveLength(3);
    });
  });

  describe(`what a recognizer can listen for (${name})`, () => {
    it('leaves a wording out that it was not taught to pronounce, and hears the others and every stop', async () => {
      const { recognizer, reports } = await ear({
        ...grammar,
        replies: [{ id: 'x', wordings: ['coolant zorblat', 'quibbly full', 'coolant full'] }],
      });
      await recognizer.hear(spoken('coolant full'));
      await recognizer.hear(spoken('stop'));
      expect(reports).toMatchObject([{ kind: 'reply', id: 'x' }, { kind: 'stop' }]);
    });

    it('says which words of a stop it was not taught to pronounce, and goes on with what it listened for', async () => {
      const { recognizer, reports } = await ear();
      expect(() => recognizer.listen({ ...grammar, stop: ['stop zorblat', 'quibbly'] })).toThrow(
        'Grammar "fill.coolant.asking" has words without a known pronunciation (zorblat, quibbly); add them to its language in src/voice/languages.',
      );
      await recognizer.hear(spoken('correct'));
      expect(reports).toMatchObject([{ kind: 'reply', id: 'yes' }]);
    });

    it('has no wordings without words', async () => {
      const { recognizer } = await ear();
      expect(() => recognizer.listen({ ...grammar, replies: [{ id: 'x', wordings: ['...'] }] })).toThrow(
        expect.objectContaining({ code: 'grammarUnusable' }),
      );
    });

    it('may be a fault code, digit by digit', async () => {
      const number = { ...grammar.number, max: 524_286, units: [], digitsOnly: true };
      const { recognizer, reports } = await ear({ ...grammar, number });
      await recognizer.hear(spoken('five two four one six eight'));
      expect(reports).toMatchObject([{ kind: 'number', value: 524_168 }]);
    });

    it('may leave out leads, units and replies, and name them without words', async () => {
      const number = { ...grammar.number, leads: [''], units: [] };
      const { recognizer, reports } = await ear({ ...grammar, replies: [], number });
      await recognizer.hear(spoken('sixty eight'));
      expect(reports).toMatchObject([{ kind: 'number', value: 68 }]);
    });
  });
}
