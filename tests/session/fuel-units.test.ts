import { describe, expect, it } from 'vitest';
import { english } from '../../prompts/en/index.ts';
import { quantityUnits } from '../../src/engineering/quantities/table.ts';
import { grammarOf, slotValueToSi } from '../../src/session/grammar.ts';
import { wordSaid } from '../../src/session/wording.ts';
import { demoSix } from '../machines/helpers/profiles.ts';
import { sessionAt } from '../machines/limits/sessions.ts';

describe('fuel, in the units of the United States,', () => {
  const asking = sessionAt(demoSix, 'fill.fuelInTank.asking');

  it('is asked for and listened for by the gallon, while oil is by the quart', () => {
    const { number } = grammarOf(asking.moment, english, 'us', 'voice');
    expect(number?.units).toContain('gallons');
    // 180 L, the tank of the demo engine, over 3.785411784 L: NIST SP 811 (2008), appendix B.8.
    expect(number?.max).toBe(47);
    const oil = sessionAt(demoSix, 'fill.oilQuantity.asking');
    expect(grammarOf(oil.moment, english, 'us', 'voice').number?.units).toContain('quarts');
  });

  it('of a small tank is taken to a tenth', () => {
    const small = { ...demoSix, fuel: { ...demoSix.fuel, tankL: 20 } };
    const { number } = grammarOf(sessionAt(small, 'fill.fuelInTank.asking').moment, english, 'us', 'voice');
    expect(number?.step).toBe(0.1);
  });

  it('is kept in litres', () => {
    expect(quantityUnits.fuelInTank).toBe('litre');
    expect(slotValueToSi('fuelInTank', 10, 'us')).toBeCloseTo(37.85411784, 8);
  });

  it('has its limits told in the unit in which it was asked for', () => {
    const tooMuch = asking.fork().value('fuelInTank', demoSix.fuel.tankL + 1);
    const told = [...tooMuch.last.said].map(said => wordSaid(said, english, 'us').shown).join(' ');
    expect(told).toContain('gal');
    expect(told).not.toMatch(/\d (qt|L)\b/);
  });
});
