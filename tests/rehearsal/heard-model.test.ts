import { describe, expect, it } from 'vitest';
import type { EngineHeard } from '../../src/engineering/engine-sound/ear.ts';
import { handsOff } from '../../src/rehearsal/model/controls.ts';
import { createEngine, STEP_S } from '../../src/rehearsal/model/engine.ts';
import { hearModel } from '../../src/rehearsal/sound/heard-model.ts';
import { firingOf } from '../../src/session/engine-ear/join-engine-ear.ts';
import { demoFour, demoSix } from '../machines/helpers/profiles.ts';

const ready = { ...handsOff, oilFilled: true, coolantFilled: true };

describe('the engine of a rehearsal', () => {
  it.each([demoFour, demoSix])(
    'is heard cranked, fired, idling at the speed of its model, and stalled ($name)',
    profile => {
      const engine = createEngine(profile, { seed: 2, ambientC: 20 });
      const heard: { readonly heard: EngineHeard; readonly rpm: number }[] = [];
      let rpm = 0;
      const hear = hearModel(firingOf(profile), 2, each => heard.push({ heard: each, rpm }));
      const run = (seconds: number) => {
        for (const untilS = engine.state.timeS + seconds; engine.state.timeS < untilS - STEP_S / 2; ) {
          engine.advanceTo(engine.state.timeS + STEP_S);
          rpm = engine.state.speed.rpm;
          hear(engine.state);
        }
      };
      engine.control({ ...ready, keyOn: true, pumpingByHand: true });
      run(120);
      expect(heard).toEqual([]);
      engine.control({ ...ready, keyOn: true, starter: true, fuelling: false });
      run(4);
      engine.control({ ...ready, keyOn: true, starter: true });
      run(2);
      engine.control({ ...ready, keyOn: true });
      run(6);
      const idling = heard.slice(-15);
      expect(idling.filter(({ heard: { claim } }) => claim).length).toBeGreaterThan(10);
      for (const each of idling)
        if (each.heard.claim) expect(Math.abs(each.heard.claim.rpm / each.rpm - 1)).toBeLessThan(0.02);
      engine.control(ready);
      run(4);
      expect(heard.flatMap(({ heard: { happened } }) => happened ?? [])).toEqual([
        'cranking',
        'fired',
        'stalled',
      ]);
    },
  );
});
