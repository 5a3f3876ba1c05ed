import { describe, expect, it } from 'vitest';
import { readLog } from '../../../src/record/index.ts';
import { EngineSound } from '../../../src/rehearsal/sound/engine-sound.ts';
import {
  type EngineEarLink,
  firingOf,
  joinEngineEar,
  tooFastRpm,
} from '../../../src/session/engine-ear/join-engine-ear.ts';
import { createEngineListener } from '../../../src/session/engine-ear/listener.ts';
import { type BusRig, busRig } from '../../helpers/bus-rig.ts';

interface EarRig extends BusRig {
  readonly ear: EngineEarLink;
  /** The engine of the profile sounds so for some seconds, and the session's clock goes along. */
  sounds(rpm: number, seconds: number): Promise<void>;
}

/** A session on demo-six whose microphone hears an engine made for the test; the bus says nothing. */
async function earRig(key: string): Promise<EarRig> {
  const run = await busRig(key);
  const ear = joinEngineEar(run.session);
  const listener = createEngineListener(firingOf(run.session.parts.profile), heard => ear.take(heard));
  const sound = new EngineSound({ cylinders: 6, strokes: 4 }, 4);
  return {
    ...run,
    ear,
    async sounds(rpm, seconds) {
      for (let block = 0; block < seconds * 10; block++) {
        await listener.hear({
          samples: sound.next({ rpm, firing: rpm > 0, starter: false }, 1600),
          sampleRateHz: 16_000,
        });
        await run.pass(100);
      }
    },
  };
}

const heardOf = async (run: BusRig) =>
  (await readLog(run.path)).entries.filter(({ kind }) => kind === 'engineHeard').map(({ data }) => data);

describe('the engine by ear', () => {
  it('is shown with its speed, and is on the record with what happened', async () => {
    const run = await earRig('checks.leaks.item1');
    await run.sounds(750, 3);
    expect(run.ear.state().rpm).toBeGreaterThan(735);
    expect(run.ear.state().rpm).toBeLessThan(765);
    expect(run.ear.state().trace.filter(rpm => rpm !== null).length).toBeGreaterThan(0);
    expect(await heardOf(run)).toContainEqual(expect.objectContaining({ happened: 'running' }));
  });

  it('refuses that all is off while it is heard turning, and opens nothing by its silence', async () => {
    const run = await earRig('checks.leaks.item1');
    await run.sounds(750, 3);
    run.session.receive({ type: 'stop' }, 'technician', 'keys');
    await run.pass(3000);
    await run.sounds(750, 1);
    await run.type('engine and key off');
    expect(run.said.at(-1)).toMatch(
      /^Danger\. I hear it turn at about 7\d\d rpm\. Key off, cut its fuel, now\./,
    );
    expect(run.key()).toBe('stopped.makingSafe');
    await run.sounds(0, 4);
    expect(run.key()).toBe('stopped.makingSafe');
    await run.type('engine and key off');
    expect(run.said.at(-1)).not.toMatch(/I hear/);
  });

  it('is called out where it is too fast, once in ten seconds, and by itself stops nothing', async () => {
    const run = await earRig('checks.leaks.item1');
    const tooFast = tooFastRpm(run.session.parts.profile);
    const { length } = run.said;
    await run.sounds(800, 2);
    for (let rpm = 800; rpm < 0.9 * tooFast; rpm *= 1.08) await run.sounds(rpm, 0.2);
    await run.sounds(0.9 * tooFast, 3);
    expect(run.said.slice(length).filter(text => text.startsWith('Danger'))).toEqual([]);
    await run.sounds(1.04 * tooFast, 4);
    const called = run.said
      .slice(length)
      .filter(text => text.startsWith('Danger. I hear the engine at about 31'));
    expect(called).toHaveLength(1);
    expect(run.key()).toBe('checks.leaks.item1');
    expect(await heardOf(run)).toContainEqual(expect.objectContaining({ happened: 'overspeed' }));
  });

  it('of another bay, that ran while this one stood, refuses nothing', async () => {
    const run = await earRig('job.ambient.asking');
    await run.sounds(750, 3);
    expect(run.ear.state().rpm).not.toBeNull();
    run.session.receive({ type: 'stop' }, 'technician', 'keys');
    await run.pass(3000);
    await run.sounds(750, 1);
    await run.type('engine and key off');
    expect(run.said.some(text => text.startsWith('I hear'))).toBe(false);
  });
});
