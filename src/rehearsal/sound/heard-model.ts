import { EngineEar, type EngineHeard } from '../../engineering/engine-sound/ear.ts';
import type { Firing } from '../../engineering/engine-sound/firing.ts';
import { soundRateHz } from '../../engineering/engine-sound/streams.ts';
import { type EngineState, STEP_S } from '../model/engine.ts';
import { EngineSound } from './engine-sound.ts';

const STEP_SAMPLES = Math.round(STEP_S * soundRateHz);
/** What has stood for so long is silent: it costs nothing then. */
const SILENT_AFTER_S = 3;

/**
 * The engine of a rehearsal, heard through the ear that hears a real one: each step of its model is made into sound.
 * @returns takes the steps, in order
 */
export function hearModel(
  firing: Firing,
  seed: number,
  onHeard: (heard: EngineHeard) => void,
): (state: EngineState) => void {
  const sound = new EngineSound(firing, seed);
  const ear = new EngineEar(firing);
  let stoodS = SILENT_AFTER_S;
  return ({ speed, controls }) => {
    stoodS = speed.rpm > 0 ? 0 : stoodS + STEP_S;
    if (stoodS > SILENT_AFTER_S) return;
    const turning = { rpm: speed.rpm, firing: speed.firing, starter: controls.starter && controls.keyOn };
    ear.push(sound.next(turning, STEP_SAMPLES), onHeard);
  };
}
