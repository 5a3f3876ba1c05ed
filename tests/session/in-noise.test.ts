import { describe, expect, it } from 'vitest';
import { wordingDistance } from '../../bench/confusions/pairs.ts';
import { grammarsOf } from '../../bench/confusions/states.ts';
import { languageCodes, languages } from '../../prompts/index.ts';
import { spokenInNoise } from '../../src/session/in-noise.ts';
import { Viewer } from '../../src/session/viewer.ts';
import { pronounceable } from '../../src/voice/decoders/network/pronounceable.ts';
import { hearingOf, isHeard } from '../../src/voice/languages/index.ts';
import { createMatcher } from '../../src/voice/meaning.ts';
import { createTypedRecognizer } from '../../src/voice/recognizers/typed.ts';
import { normalizeWording } from '../../src/voice/wording.ts';
import { goodReply, rig } from '../helpers/session-rig.ts';

describe.each(languageCodes)('what is asked for in a loud bay, in %s', code => {
  const language = languages[code];
  const loud = spokenInNoise(language);

  it('is said as it may always be said: the same wordings of everything, and one of them first', () => {
    for (const part of ['replies', 'controls'] as const) {
      for (const [id, wordings] of Object.entries(language[part])) {
        const inNoise: readonly string[] = Reflect.get(loud[part], id);
        expect([...inNoise].sort(), id).toEqual([...wordings].sort());
      }
    }
    expect(loud.stopWordings).toBe(language.stopWordings);
    const known = { ...language.replies, ...language.controls } as Readonly<
      Record<string, readonly string[]>
    >;
    for (const [id, wording] of Object.entries(language.farthest)) expect(known[id]).toContain(wording);
  });

  it.runIf(isHeard(code))('and everything else that is ever listened for has a known pronunciation', () => {
    if (!isHeard(code)) return;
    const { pronounce } = hearingOf(code);
    for (const grammar of grammarsOf(code))
      expect(pronounceable(grammar, pronounce).replies, grammar.key).toEqual(grammar.replies);
  });

  it.runIf(isHeard(code))(
    'is nowhere nearer to something else than the wording that is asked for otherwise',
    () => {
      if (!isHeard(code)) return;
      const distance = wordingDistance(code, hearingOf(code).pronounce);
      const nearest = new Map<string, { usual: number; loud: number }>();
      for (const { replies, stop } of grammarsOf(code)) {
        for (const { id, wordings } of replies) {
          const far = Reflect.get(language.farthest, id) as string | undefined;
          const [usual = ''] = wordings;
          if (far === undefined) continue;
          const others = [
            ...stop,
            ...replies.filter(other => other.id !== id).map(other => other.wordings[0] ?? ''),
          ].map(normalizeWording);
          const from = (wording: string) =>
            Math.min(...others.map(other => distance(normalizeWording(wording), other)));
          const known = nearest.get(id) ?? {
            usual: Number.POSITIVE_INFINITY,
            loud: Number.POSITIVE_INFINITY,
          };
          nearest.set(id, {
            usual: Math.min(known.usual, from(usual)),
            loud: Math.min(known.loud, from(far)),
          });
        }
      }
      expect(nearest.size).toBeGreaterThan(30);
      for (const [id, { usual, loud: far }] of nearest) expect(far, id).toBeGreaterThan(usual);
    },
  );
});

describe('a session in a loud bay', () => {
  async function sessionIn(aboveNoiseDb: number) {
    const run = await rig();
    const voice = createTypedRecognizer();
    run.session.attach(voice, 'voice');
    const viewer = new Viewer(run.session, 'microphone');
    await run.session.begin();
    let nth = 0;
    const measure = async (above: number) => {
      for (let i = 0; i < 3; i++) {
        nth += 1;
        const utterance = { nth, speechDbfs: -30, aboveNoiseDb: above };
        run.session.level({ levelDbfs: -30, clipping: false, speech: false, noiseDbfs: -40, utterance });
      }
      await run.pass(20_000);
    };
    await measure(aboveNoiseDb);
    return { run, viewer, measure };
  }

  it('says once how to speak, shows it while it lasts, and that it is over', async () => {
    const { run, viewer, measure } = await sessionIn(9);
    const { bayLoud, bayLessLoud } = languages.en.lines;
    expect(run.said.filter(line => line.includes(bayLoud))).toHaveLength(1);
    expect(viewer.view().problems).toContain(bayLoud);
    await measure(9);
    expect(run.said.filter(line => line.includes(bayLoud))).toHaveLength(1);
    await measure(25);
    expect(run.said.filter(line => line.includes(bayLessLoud))).toHaveLength(1);
    expect(viewer.view().problems).not.toContain(bayLoud);
  });

  it('asks by voice for figures one by one, by keys for a number as ever, and offers what is farthest apart', async () => {
    const { run, viewer } = await sessionIn(9);
    const offered = new Set<string>();
    for (let i = 0; i < 40 && run.session.grammar('voice').number === undefined; i++) {
      for (const choice of viewer.view().choices) offered.add(choice);
      await run.type(goodReply(run) ?? '');
    }
    expect([...offered]).toEqual(expect.arrayContaining(['i understand', 'protection is on']));
    expect(offered).not.toContain('protection on');
    const grammar = run.session.grammar('voice');
    expect(grammar.number?.digitsOnly).toBe(true);
    expect(run.session.grammar('keys').number?.digitsOnly).toBe(false);
    const { meaningOf } = createMatcher(grammar);
    expect(meaningOf('one four')).toMatchObject({ kind: 'number', value: 14 });
    expect(meaningOf('fourteen')).toBeUndefined();
    expect(grammar.stop).toEqual(languages.en.stopWordings);
  });
});
