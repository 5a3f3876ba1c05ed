import { phaseOf } from '../../machines/build-step.ts';
import type { CanFrame } from '../bus/frame.ts';
import type { BusSource } from '../bus/ports.ts';
import type { Clock } from '../session/clock.ts';
import type { Session, SessionParts } from '../session/session.ts';
import { createBroadcast } from './bus/broadcast.ts';
import { createController } from './bus/controller.ts';
import { sensorReadings } from './bus/sensors.ts';
import { type Contradiction, createContradictions } from './contradictions.ts';
import { faultPhases, type PlannedFault } from './faults.ts';
import { createEyes, type Gauges } from './gauges.ts';
import { createEngine, type Engine, type EngineState, STEP_S } from './model/engine.ts';
import { controlsAt } from './operator.ts';
import { seeded } from './random.ts';
import { createPushedSource } from './source.ts';

export interface RehearsalOptions {
  readonly seed: number;
  readonly faults: readonly PlannedFault[];
  /** Of the air around the engine, which stands as cold; -40 to 50 degC. */
  readonly ambientC: number;
}

/** A fault that has come, and when, in session time. */
export interface InjectedFault extends PlannedFault {
  readonly atMs: number;
}

export interface Rehearsal {
  /** The vehicle's bus; it is silent while the key is off. */
  readonly source: BusSource;
  readonly engine: Engine;
  readonly gauges: Gauges;
  readonly injected: readonly InjectedFault[];
  /** What was answered against what the engine showed. */
  readonly contradictions: readonly Contradiction[];
  /** Called after each look at the engine. */
  watch(watcher: () => void): void;
  /** Called with each step of the engine, every `STEP_S` of session time. */
  eachStep(watcher: (state: EngineState) => void): void;
  /** Moves the engine along with the session's clock until the signal; then the bus falls silent. */
  run(signal: AbortSignal): Promise<void>;
}

/** How often the engine is looked at, session time: with the key on, and with it off. */
const AWAKE_MS = 100;
const ASLEEP_MS = 500;

const phaseOrder: readonly string[] = faultPhases;

/** Lets faults come when the procedure has reached their phase. */
function createInjector(
  engine: Pick<ReturnType<typeof createEngine>, 'faults' | 'inject'>,
  planned: RehearsalOptions['faults'],
  clock: Clock,
) {
  const injected: InjectedFault[] = [];
  return {
    injected,
    injectDue(phase: string): void {
      const now = phaseOrder.indexOf(phase);
      for (const fault of planned) {
        if (engine.faults.has(fault.name) || phaseOrder.indexOf(fault.phase) > now) continue;
        engine.inject(fault.name);
        injected.push({ ...fault, atMs: clock.nowMs() });
      }
    },
  };
}

/** An engine that goes along with a session: the procedure moves it, and it answers on the bus and on gauges. */
export function createRehearsal(
  session: Pick<Session, 'moment'> & { readonly parts: Pick<SessionParts, 'profile'> },
  clock: Clock,
  options: RehearsalOptions,
): Rehearsal {
  const { profile } = session.parts;
  const engine = createEngine(profile, options);
  const controller = createController(profile);
  const eyes = createEyes(profile, engine);
  const broadcast = createBroadcast();
  const noise = seeded(options.seed, 'noise');
  const source = createPushedSource(`rehearsal with seed ${options.seed}`);
  const injector = createInjector(engine, options.faults, clock);
  const contradictions = createContradictions(profile, options.ambientC);
  const watchers: (() => void)[] = [];
  const stepWatchers: ((state: EngineState) => void)[] = [];
  const startMs = clock.nowMs();
  let view = controller.look(engine.state, engine.faults);
  let gauges = eyes.look(view);

  function framesNow(): CanFrame[] {
    const { timeS, controls } = engine.state;
    if (!controls.keyOn) {
      broadcast.sleep();
      return [];
    }
    return broadcast.framesAt(timeS, () => ({
      readings: sensorReadings(engine.state, engine.faults, options.ambientC, noise),
      codes: view.codes,
    }));
  }

  /** Catches up with the clock, a step at a time; what is sent carries the time of its step. */
  async function catchUp(): Promise<void> {
    injector.injectDue(phaseOf(session.moment.context.step));
    engine.control(controlsAt(session.moment, engine.state.controls, profile, clock.nowMs()));
    const frames: CanFrame[] = [];
    const untilS = (clock.nowMs() - startMs) / 1000;
    for (let atS = engine.state.timeS + STEP_S; atS <= untilS + STEP_S / 2; atS += STEP_S) {
      engine.advanceTo(atS);
      view = controller.look(engine.state, engine.faults);
      eyes.remember(view);
      for (const watcher of stepWatchers) watcher(engine.state);
      frames.push(...framesNow());
    }
    gauges = eyes.look(view);
    contradictions.look(session.moment, gauges, clock.nowMs());
    await source.push(frames);
    for (const watcher of watchers) watcher();
  }

  return {
    source,
    engine,
    get gauges() {
      return gauges;
    },
    injected: injector.injected,
    contradictions: contradictions.found,
    watch(watcher) {
      watchers.push(watcher);
    },
    eachStep(watcher) {
      stepWatchers.push(watcher);
    },
    async run(signal) {
      while (!signal.aborted) {
        await clock.sleep(engine.state.controls.keyOn ? AWAKE_MS : ASLEEP_MS, signal);
        if (!signal.aborted) await catchUp();
      }
      source.close();
    },
  };
}
