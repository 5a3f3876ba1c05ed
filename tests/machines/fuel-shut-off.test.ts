import { describe, expect, it } from 'vitest';
import { languageCodes, languages } from '../../prompts/index.ts';
import { parseProfile } from '../../src/profile/parse.ts';
import type { Profile } from '../../src/profile/schema.ts';
import { wordSaid } from '../../src/session/wording.ts';
import { demoBoat } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

type Kind = Profile['fuelling']['disabledBy'];

const at = 'stop lever at the pump';
const shutOffBy = (disabledBy: Kind, cutOff = demoBoat.cutOff): Profile => {
  const { cutOff: _, ...rest } = demoBoat;
  return { ...rest, ...(cutOff ? { cutOff } : {}), fuelling: { disabledBy, at } };
};
const { cutOff: _, ...withoutCutOff } = demoBoat;

/** What is asked there, by the line that says how. */
const asked = (kind: Kind, step: string, blank: string) =>
  sessionAt(shutOffBy(kind), `${step}.asking`).context.lastSaid?.values[blank];

describe('before it is cranked without fuel', () => {
  it.each<[Kind, string, string]>([
    ['electric', 'disableElectric', 'proveElectric'],
    ['lever', 'disableLever', 'proveLever'],
    ['solenoid', 'disableSolenoid', 'proveSolenoid'],
    // Unplugged it would fuel, and "no click" would be just as true.
    ['stopSolenoid', 'disableStopSolenoid', 'proveLever'],
  ])('%s: it is disabled and proved off by what shuts it off without current', (kind, how, proof) => {
    expect(asked(kind, 'noFuelCrank.disabled', 'how')).toEqual({ line: how, values: { at } });
    expect(asked(kind, 'noFuelCrank.proved', 'proof')).toEqual({ line: proof, values: { at } });
  });
});

describe('an engine that runs on and is shut off by current', () => {
  const cutOf = (profile: Profile) =>
    sessionAt(profile, 'firstFire.eyes.item1')
      .stop()
      .reply('stillRunning')
      .last.said.find(({ line }) => line === 'stillRunning');

  it('is shut off by its lever, since a cut-off may want current itself; that is named after it, where there is one', () => {
    expect(cutOf(shutOffBy('stopSolenoid'))?.values.cut).toEqual({
      line: 'cutByHandOr',
      values: { at, other: demoBoat.cutOff?.at },
    });
    expect(cutOf({ ...withoutCutOff, fuelling: { disabledBy: 'stopSolenoid', at } })?.values.cut).toEqual({
      line: 'cutByHand',
      values: { at },
    });
  });

  it.each(languageCodes)('is told what to move, and its air after that (%s)', code => {
    const said = cutOf(shutOffBy('stopSolenoid'));
    if (!said) throw new Error('nothing was said of what cuts it off');
    const { shown } = wordSaid(said, languages[code], 'metric');
    const inOrder = [
      at,
      /by hand|à la main|con la mano/,
      String(demoBoat.cutOff?.at),
      /block its air|bouchez son air|tape su aire/,
    ];
    const places = inOrder.map(part => shown.search(part));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(places[0]).toBeGreaterThan(0);
    expect(shown).not.toMatch(/[{}]/);
  });
});

it('A profile says which it is; one from before is read as it was', () => {
  for (const kind of ['electric', 'lever', 'solenoid', 'stopSolenoid'] as const)
    expect(parseProfile(JSON.stringify(shutOffBy(kind)), 'test').fuelling.disabledBy).toBe(kind);
});
