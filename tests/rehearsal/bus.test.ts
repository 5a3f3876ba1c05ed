import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createDecoder } from '../../src/bus/decoder.ts';
import type { DiagnosticMessage } from '../../src/bus/diagnostics/dm1.ts';
import type { CanFrame } from '../../src/bus/frame.ts';
import { MESSAGES } from '../../src/bus/messages.ts';
import type { ParameterContent } from '../../src/bus/parameter-codec.ts';
import { PARAMETERS } from '../../src/bus/parameters.ts';
import type { BusReading } from '../../src/bus/ports.ts';
import { announceToAll } from '../../src/bus/transport/announce.ts';
import { createBroadcast } from '../../src/rehearsal/bus/broadcast.ts';
import { type ActiveCode, createController } from '../../src/rehearsal/bus/controller.ts';
import { sensorReadings } from '../../src/rehearsal/bus/sensors.ts';
import { handsOff } from '../../src/rehearsal/model/controls.ts';
import { createEngine } from '../../src/rehearsal/model/engine.ts';
import { seeded } from '../../src/rehearsal/random.ts';
import { demoSix } from '../machines/helpers/profiles.ts';

function decoded(frames: readonly CanFrame[]) {
  const readings: BusReading[] = [];
  const diagnostics: DiagnosticMessage[] = [];
  const failures: unknown[] = [];
  const decoder = createDecoder({
    onReading: reading => readings.push(reading),
    onDiagnostics: message => diagnostics.push(message),
    onTransportFailure: failure => failures.push(failure),
  });
  for (const frame of frames) decoder.push(frame);
  return { readings, diagnostics, failures };
}

/** Frames of so many seconds in which nothing changes. */
function sent(
  seconds: number,
  readings: ReadonlyMap<number, ParameterContent>,
  codes: readonly ActiveCode[] = [],
) {
  const broadcast = createBroadcast();
  const frames: CanFrame[] = [];
  for (let step = 0; step < seconds * 20; step += 1)
    frames.push(...broadcast.framesAt(step * 0.05, () => ({ readings, codes })));
  return frames;
}

const code = (spn: number, fmi: number, lamp: ActiveCode['lamp'] = 'amberWarning'): ActiveCode => ({
  spn,
  fmi,
  lamp,
});

describe('the bus of the rehearsed engine', () => {
  it('says what the engine is doing, to the resolution and noise of each parameter', () => {
    const engine = createEngine(demoSix, { seed: 5, ambientC: 5 });
    engine.control({ ...handsOff, keyOn: true, starter: true, fuelling: false, oilFilled: true });
    engine.advanceTo(20);
    const { speed, oil, electrics, heat } = engine.state;
    const { readings } = decoded(sent(1, sensorReadings(engine.state, engine.faults, 5, seeded(5, 'noise'))));
    const valueAt = (spn: number) => {
      const found = readings.find(reading => reading.spn === spn);
      return found?.kind === 'value' ? found.value : Number.NaN;
    };
    expect(Math.abs(valueAt(190) - speed.rpm)).toBeLessThan(15);
    expect(Math.abs(valueAt(100) - oil.pressureKpa)).toBeLessThan(15);
    expect(Math.abs(valueAt(168) - electrics.batteryV)).toBeLessThan(0.2);
    expect(Math.abs(valueAt(110) - heat.coolantC)).toBeLessThan(1.5);
  });

  it('decodes back to within half a step whatever number a parameter is given, and never to a number for none', () => {
    fc.assert(
      fc.property(fc.constantFrom(...PARAMETERS), fc.double(), (parameter, content) => {
        if (MESSAGES.find(({ pgn }) => pgn === parameter.pgn)?.repeatS === undefined) return;
        const { readings } = decoded(sent(0.05, new Map([[parameter.spn, content]])));
        const read = readings.find(({ spn }) => spn === parameter.spn);
        if (Number.isNaN(content) || !Number.isFinite(content)) expect(read?.kind).toBe('error');
        else if (
          read?.kind === 'value' &&
          content >= parameter.offset &&
          content < parameter.offset + parameter.scale * 200 &&
          parameter.bits >= 8
        )
          expect(Math.abs(read.value - content)).toBeLessThanOrEqual(parameter.scale / 2 + 1e-9);
      }),
      { numRuns: 200 },
    );
  });

  it('repeats each message at its usual rate', () => {
    const readings = new Map<number, ParameterContent>([
      [190, 800],
      [91, 0],
      [110, 20],
    ]);
    const { readings: read } = decoded(sent(10, readings));
    const count = (spn: number) => read.filter(reading => reading.spn === spn).length;
    expect([count(190), count(91), count(110)]).toEqual([100, 200, 10]);
  });

  it('sends no message in which there is nothing', () => {
    expect(decoded(sent(10, new Map())).readings).toEqual([]);
  });

  it('sends its codes with their lamps once a second: none, one in a frame, several in packets', () => {
    const [none, one] = [[], [code(100, 1, 'redStop')]].map(
      codes => decoded(sent(5, new Map(), codes)).diagnostics,
    );
    expect(none?.map(({ faults, complete }) => [faults.length, complete])).toEqual(Array(5).fill([0, true]));
    expect(one?.[0]?.lamps.redStop.status).toBe('on');
    expect(one?.[0]?.faults[0]).toMatchObject({ spn: { spn: 100 }, fmi: 1 });
    const several = [code(110, 3), code(97, 15), code(157, 18)];
    const { diagnostics, failures } = decoded(sent(5, new Map(), several));
    expect(failures).toEqual([]);
    expect(diagnostics).toHaveLength(5);
    expect(diagnostics[0]?.faults.map(({ fmi }) => fmi)).toEqual([3, 15, 18]);
  });

  it('puts any long message into frames that come together again', () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 9, maxLength: 400 }), data => {
        const frames = announceToAll(0, 0, 65226, data);
        expect(decoded(frames).failures).toEqual([]);
        expect(decoded(frames).diagnostics).toHaveLength(1);
      }),
    );
    expect(() => announceToAll(0, 0, 65226, new Uint8Array(8))).toThrow(RangeError);
  });
});

describe('the lamps of the rehearsed engine', () => {
  const look = (fault?: 'lampDriverOpen' | 'alternatorDead') => {
    const engine = createEngine(demoSix, { seed: 5, ambientC: 5 });
    if (fault) engine.inject(fault);
    engine.control({ ...handsOff, keyOn: true, oilFilled: true });
    const controller = createController(demoSix);
    const at = (timeS: number) => {
      engine.advanceTo(timeS);
      return [...controller.look(engine.state, engine.faults).lit];
    };
    return { early: at(1), late: at(30) };
  };

  it('are tried at key-on as the profile expects, then tell what is so', () => {
    const expected = demoSix.lamps.filter(({ keyOn }) => keyOn === 'on').map(({ id }) => id);
    expect(look().early).toEqual(expected);
    expect(look().late).toEqual(['oilPressure', 'charging']);
  });

  it('stay dark where the driver is open', () => {
    expect(look('lampDriverOpen').early).not.toContain('redStop');
  });
});
