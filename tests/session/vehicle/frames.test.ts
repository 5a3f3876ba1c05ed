import fc from 'fast-check';
import { expect, it } from 'vitest';
import { procedureFor } from '../../../machines/first-start.ts';
import { j1939Frame } from '../../../src/bus/frame.ts';
import { rangeOf } from '../../../src/bus/parameter-codec.ts';
import { PARAMETERS } from '../../../src/bus/parameters.ts';
import { busRig, dm1Frame, parameterFrame } from '../../helpers/bus-rig.ts';

const SEED = 20_261_126;

const parameter = fc.constantFrom(...PARAMETERS).chain(definition => {
  const { min, max } = rangeOf(definition);
  const content = fc.oneof(
    fc.double({ min, max, noNaN: true }),
    fc.constantFrom('notAvailable' as const, 'error' as const),
  );
  return content.map(value => parameterFrame(definition.spn, value));
});
const code = fc.option(fc.record({ spn: fc.nat(524_287), fmi: fc.nat(31) }));
const diagnostics = fc
  .tuple(code, fc.subarray(['redStop', 'amberWarning'] as const))
  .map(([one, lamps]) => dm1Frame(one, Object.fromEntries(lamps.map(name => [name, true as const]))));
const anything = fc
  .tuple(fc.nat(0x1fffffff), fc.uint8Array({ maxLength: 8 }))
  .map(([id, data]) => j1939Frame(0, id, data));
const frames = fc.array(fc.oneof(parameter, diagnostics, anything), { minLength: 1, maxLength: 12 });

/** Where the last word before a gate is somebody's, and the bus has something to say of it. */
const places = [
  'noFuelCrank.batteryLoad.asking',
  'keyOn.faults.asking',
  'firstFire.oilPressure.asking',
  'checks.oilPressure.asking',
];

it(`no sequence of frames opens a gate that takes somebody's word, or turns a starter (seed ${SEED})`, async () => {
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...places), frames, async (place, sent) => {
      const run = await busRig(place);
      const before = new Set<string>(run.session.moment.context.done);
      const gated = procedureFor(run.session.parts.profile).filter(step => step.gate !== undefined);
      for (const frame of sent) {
        run.source.send(frame);
        await run.pass(100);
        expect(run.session.moment.hasTag('cranking')).toBe(false);
      }
      const { done } = run.session.moment.context;
      expect(gated.filter(({ id }) => done.includes(id) && !before.has(id))).toEqual([]);
      run.link.close();
    }),
    { seed: SEED, numRuns: 12 },
  );
}, 300_000);
