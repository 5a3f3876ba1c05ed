import { describe, expect, it } from 'vitest';
import { languages } from '../../prompts/index.ts';
import { grammarOf } from '../../src/session/grammar.ts';
import { meaningOf, takesReason } from '../../src/session/hearing.ts';
import { meansStop } from '../../src/session/stop-words.ts';
import type { Heard } from '../../src/voice/ports.ts';
import type { Driver } from '../machines/helpers/driver.ts';
import { demoSix } from '../machines/helpers/profiles.ts';
import { sessionAt } from '../machines/limits/sessions.ts';

const inWords = { language: languages.en, units: 'us' } as const;
const asking = sessionAt(demoSix, 'job.ambient.asking');
const confirming = sessionAt(demoSix, 'job.hazards.asking');
const counting = sessionAt(demoSix, 'fill.coolantBleed.counting');
const reason = sessionAt(demoSix, 'fill.coolantFreezePoint.asking').send({ type: 'skip' });

const reply = (id: string, confidence = 0.8): Heard => ({ kind: 'reply', id, text: id, confidence });
const number = (id: string, value: number): Heard => ({
  kind: 'number',
  id,
  value,
  text: '',
  confidence: 0.8,
});
const unclear = (
  text: string,
  why: Extract<Heard, { kind: 'unclear' }>['reason'] = 'outOfGrammar',
): Heard => ({
  kind: 'unclear',
  text,
  reason: why,
});
const means = (heard: Heard, driver: Driver, via: 'voice' | 'keys' | 'touch' = 'voice') =>
  meaningOf(heard, driver.moment, via, inWords);

describe('"skip"', () => {
  it.each([
    ['keys', true],
    ['touch', true],
    ['voice', false],
  ] as const)('by %s leaves out a step that may be left out: %s', (via, may) => {
    const { replies } = grammarOf(sessionAt(demoSix, 'prime.strokes.asking').moment, languages.en, 'us', via);
    expect(replies.find(({ id }) => id === 'skip')?.wordings.includes('skip')).toBe(may);
  });
});

describe('what was heard', () => {
  it('means stop everywhere', () => {
    for (const driver of [asking, confirming, counting, reason])
      expect(means({ kind: 'stop', text: 'stop' }, driver).body).toEqual({ type: 'stop' });
  });

  it('by voice goes with how certain the ear was, from none to whole; by keys there is no doubt', () => {
    const certainty = (confidence: number) => means(reply('understood', confidence), confirming).body;
    for (const [given, kept] of [
      [0.8, 0.8],
      [-3, 0],
      [7, 1],
    ] as const)
      expect(certainty(given)).toEqual({ type: 'reply', id: 'understood', certainty: kept });
    for (const via of ['keys', 'touch'] as const)
      expect(means(reply('understood'), confirming, via).body).toEqual({ type: 'reply', id: 'understood' });
  });

  it('as a number is taken in SI, for what is asked and nothing else', () => {
    const body = means(number('ambientTemperature', 41), asking).body;
    expect(body).toMatchObject({ type: 'value', quantity: 'ambientTemperature', certainty: 0.8 });
    expect(body?.type === 'value' ? body.si : Number.NaN).toBeCloseTo(5, 9);
    expect(means(number('altitude', 41), asking).body).toEqual({ type: 'unclear' });
    expect(means(number('ambientTemperature', 41), confirming).body).toEqual({ type: 'unclear' });
  });

  it('as a word that is always understood does what it says, and as no reply at all is unclear', () => {
    expect(means(reply('hold'), confirming).body).toEqual({ type: 'hold' });
    expect(means(reply('nothingOfTheKind'), confirming).body).toEqual({ type: 'unclear' });
  });

  it('out of the range is told its range, not that it was misunderstood', () => {
    expect(means(unclear('9000', 'outOfRange'), asking).body).toBeNull();
    expect(means(unclear('9000'), asking).body).toEqual({ type: 'unclear' });
  });

  it('unclearly matters where an answer is awaited, of whatever kind', () => {
    expect(means(unclear('mumble'), confirming).body).toEqual({ type: 'unclear' });
    expect(means(unclear('mumble'), asking).body).toEqual({ type: 'unclear' });
    expect(means(unclear('mumble'), counting).body).toBeNull();
  });
});

describe('a reason', () => {
  it('is free text by keys, where one is asked for, and not empty', () => {
    expect([takesReason(reason.moment), takesReason(asking.moment)]).toEqual([true, false]);
    expect(means(unclear(' no refractometer '), reason, 'keys').body).toEqual({
      type: 'reason',
      text: 'no refractometer',
    });
    expect(means(unclear('  '), reason, 'keys').body).not.toMatchObject({ type: 'reason' });
    expect(means(unclear('no refractometer'), reason, 'voice').body).not.toMatchObject({ type: 'reason' });
    expect(means(unclear('no refractometer'), confirming, 'keys').body).toEqual({ type: 'unclear' });
  });
});

describe('who said it', () => {
  const misheard = (times: number) => {
    const driver = confirming.fork([]);
    driver.moment = driver.machine.resolveState({
      value: driver.moment.value,
      context: { ...driver.moment.context, misheard: times },
    });
    return driver;
  };

  it('is the one who is asked, or whoever the device belongs to', () => {
    expect(means(reply('understood'), confirming).by).toBe('technician');
    expect(meaningOf(reply('understood'), confirming.moment, 'voice', inWords, 'supervisor').by).toBe(
      'supervisor',
    );
  });

  it('is by voice the second person, once the other was misheard three times', () => {
    expect(means(reply('understood'), misheard(2)).by).toBe('technician');
    expect(means(reply('understood'), misheard(3)).by).toBe('second');
    expect(means(reply('understood'), misheard(3), 'keys').by).toBe('technician');
  });
});

describe('a text', () => {
  it.each(['stop', 'Stop!', 'please stop', 'emergency stop'])('"%s" means stop', text => {
    expect(meansStop(text, languages.en)).toBe(true);
  });
  it.each(['', 'ready', 'the shop is open'])('"%s" does not', text => {
    expect(meansStop(text, languages.en)).toBe(false);
  });
  it('means so in its own language', () => {
    expect(meansStop('arretez le moteur', languages.fr)).toBe(true);
  });
});
