import { describe, expect, it } from 'vitest';
import type { CanFrame } from '../../../src/bus/frame.ts';
import type { ParameterContent } from '../../../src/bus/parameter-codec.ts';
import { createSurvey } from '../../../src/session/vehicle/survey.ts';
import { dm1Frame, parameterFrame } from '../../helpers/bus-rig.ts';

const SPEED = 190;
const OIL = 100;
const COOLANT = 110;
const AIR = 171;
const KEY_SWITCH = 158;
const CHARGING = 167;

const at = (timeS: number, frame: CanFrame): CanFrame => ({ ...frame, timeS });

/** The same parameter at each of these seconds. */
const sent = (spn: number, content: ParameterContent, seconds: readonly number[], source = 0): CanFrame[] =>
  seconds.map(timeS => at(timeS, parameterFrame(spn, content, source)));

/** Every so many seconds from 0 on. */
const every = (apartS: number, times = 5): number[] => Array.from({ length: times }, (_, i) => i * apartS);

function surveyOf(...frames: readonly CanFrame[]) {
  const survey = createSurvey();
  for (const frame of frames.toSorted((one, other) => one.timeS - other.timeS)) survey.push(frame);
  return survey.result();
}
const reading = (name: string, ...frames: readonly CanFrame[]) =>
  surveyOf(...frames).readings.find(({ quantity }) => quantity === name);

const engine = sent(SPEED, 800, every(0.1));

describe('what a log holds', () => {
  it('is nothing where there is nothing in it', () => {
    expect(surveyOf()).toEqual({
      spanS: 0,
      frames: 0,
      extended: 0,
      senders: [],
      engines: [],
      readings: [
        { quantity: 'engineSpeed', unit: 'rpm', kind: 'notSent' },
        { quantity: 'oilPressure', unit: 'kPa', kind: 'notSent' },
        { quantity: 'coolantTemperature', unit: 'degC', kind: 'notSent' },
        { quantity: 'batteryVoltage', unit: 'V', kind: 'notSent' },
        { quantity: 'chargingVoltage', unit: 'V', kind: 'notSent' },
        { quantity: 'ambientTemperature', unit: 'degC', kind: 'notSent' },
      ],
      lampsEveryS: null,
    });
  });

  it('is told by its length, its frames and its senders; what is no data of J1939 is counted, and no more', () => {
    const other = parameterFrame(OIL, 300, 33);
    const survey = surveyOf(
      ...sent(SPEED, 800, [10, 12.5], 0),
      at(11, parameterFrame(AIR, 5, 33)),
      at(11.5, { ...other, extended: false }),
      at(11.6, { ...other, remote: true }),
    );
    expect(survey).toMatchObject({ spanS: 2.5, frames: 5, extended: 3, senders: [0, 33] });
    expect(survey.readings.find(({ quantity }) => quantity === 'oilPressure')?.kind).toBe('notSent');
  });
});

describe('the engine of a log', () => {
  it('is who sends a speed, the most frequent first; one that only says "not available" is none', () => {
    const { engines, senders } = surveyOf(
      ...sent(SPEED, 800, every(0.1, 4), 1),
      ...sent(SPEED, 800, every(0.1, 9), 0),
      ...sent(SPEED, 'notAvailable', every(0.1, 20), 2),
      ...sent(OIL, 300, every(0.5), 3),
    );
    expect(engines).toEqual([0, 1]);
    expect(senders).toEqual([0, 1, 2, 3]);
  });

  it('is whose oil pressure and coolant count; the air and the batteries are anybody’s', () => {
    const foreign = [
      ...engine,
      ...sent(OIL, 300, every(0.5), 33),
      ...sent(COOLANT, 80, every(1), 33),
      ...sent(AIR, 5, every(1), 33),
    ];
    expect(reading('oilPressure', ...foreign)?.kind).toBe('notSent');
    expect(reading('coolantTemperature', ...foreign)?.kind).toBe('notSent');
    expect(reading('ambientTemperature', ...foreign)).toMatchObject({ kind: 'sent', spn: AIR, source: 33 });
  });

  it('sends its lamps and codes so often, by the middle of the times between', () => {
    const lamps = (source: number, seconds: readonly number[]) =>
      seconds.map(timeS => at(timeS, dm1Frame(null, {}, source)));
    expect(surveyOf(...engine, ...lamps(0, [0, 1, 2, 5])).lampsEveryS).toBe(1);
    expect(surveyOf(...engine, ...lamps(33, [0, 1, 2])).lampsEveryS).toBeNull();
    expect(surveyOf(...lamps(0, [0, 1, 2])).lampsEveryS).toBeNull();
  });
});

describe('a quantity of a log', () => {
  it('is told by where it comes from, how often, and between what', () => {
    const pressures = [300, 240, 360].map((kPa, i) => at(i * 0.5, parameterFrame(OIL, kPa)));
    expect(reading('oilPressure', ...engine, ...pressures)).toEqual({
      quantity: 'oilPressure',
      unit: 'kPa',
      kind: 'sent',
      spn: OIL,
      source: 0,
      everyS: 0.5,
      min: 240,
      max: 360,
    });
  });

  it('is read by the best of its parameters that is sent: charging by its own, else by the key switch', () => {
    const keySwitch = sent(KEY_SWITCH, 14, every(1));
    expect(reading('chargingVoltage', ...keySwitch)).toMatchObject({ kind: 'sent', spn: KEY_SWITCH });
    expect(reading('chargingVoltage', ...keySwitch, ...sent(CHARGING, 14.2, every(1)))).toMatchObject({
      kind: 'sent',
      spn: CHARGING,
    });
  });

  it('that is never a value says why: in error where it ever was, else not available', () => {
    const absent = sent(OIL, 'notAvailable', every(0.5));
    expect(reading('oilPressure', ...engine, ...absent)?.kind).toBe('notAvailable');
    expect(reading('oilPressure', ...engine, ...absent, at(3, parameterFrame(OIL, 'error')))?.kind).toBe(
      'inError',
    );
  });

  it('of several senders is in error where any of them is', () => {
    expect(
      reading(
        'ambientTemperature',
        ...sent(AIR, 'notAvailable', every(1), 1),
        ...sent(AIR, 'error', every(1), 2),
      )?.kind,
    ).toBe('inError');
  });

  it('that was in error now and then is a value all the same', () => {
    expect(
      reading('oilPressure', ...engine, ...sent(OIL, 300, every(0.5)), at(3, parameterFrame(OIL, 'error'))),
    ).toMatchObject({ kind: 'sent', everyS: 0.5 });
  });

  it('that no gauge can show is impossible, at either end', () => {
    const coolant = (...degC: readonly number[]) =>
      reading('coolantTemperature', ...engine, ...degC.map((each, i) => at(i, parameterFrame(COOLANT, each))))
        ?.kind;
    expect(coolant(80, 150)).toBe('sent');
    expect(coolant(80, 151)).toBe('impossible');
    const air = (degC: number) =>
      reading('ambientTemperature', ...sent(AIR, 5, [0, 1, 2]), ...sent(AIR, degC, [3]))?.kind;
    expect(air(-60)).toBe('sent');
    expect(air(-61)).toBe('impossible');
  });

  it('that comes more rarely than three of its repetitions is too rare to act on, and so is a single one', () => {
    // The coolant is repeated every second, the oil pressure every half: SAE J1939-71 (from memory).
    const kind = (name: string, spn: number, content: number, apartS: number, times = 3) =>
      reading(name, ...engine, ...sent(spn, content, every(apartS, times)))?.kind;
    expect(kind('coolantTemperature', COOLANT, 80, 3)).toBe('sent');
    expect(kind('coolantTemperature', COOLANT, 80, 3.5)).toBe('tooRare');
    expect(kind('oilPressure', OIL, 300, 1.5)).toBe('sent');
    expect(kind('oilPressure', OIL, 300, 2)).toBe('tooRare');
    expect(kind('oilPressure', OIL, 300, 1, 1)).toBe('tooRare');
  });

  it('has a rhythm by the middle of the times between, so that one long gap is none', () => {
    const pressure = sent(OIL, 300, [0, 0.5, 1, 20, 20.5]);
    expect(reading('oilPressure', ...engine, ...pressure)).toMatchObject({ kind: 'sent', everyS: 0.5 });
  });
});
