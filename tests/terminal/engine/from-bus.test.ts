import { mkdtempSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatCandumpLine } from '../../../src/bus/formats/candump.ts';
import type { CanFrame } from '../../../src/bus/frame.ts';
import { buildProfile } from '../../../src/interview/build.ts';
import { nextQuestion, withAnswer } from '../../../src/interview/interview.ts';
import { loadProfile } from '../../../src/profile/load.ts';
import { createBroadcast } from '../../../src/rehearsal/bus/broadcast.ts';
import { sensorReadings } from '../../../src/rehearsal/bus/sensors.ts';
import { createEngine } from '../../../src/rehearsal/model/engine.ts';
import { seeded } from '../../../src/rehearsal/random.ts';
import { surveyLines, surveyLog, writeBus } from '../../../src/terminal/engine/from-bus.ts';
import { keepAnswers, keptAnswers, writeProfile } from '../../../src/terminal/engine/profile-file.ts';
import { randomInterview } from '../../interview/random-interview.ts';

const folder = () => mkdtempSync(join(tmpdir(), 'from-bus-'));
const six = await loadProfile('demo-six');

/** What the rehearsal's engine sends in so many seconds with the key on. */
function framesOf(seconds: number): CanFrame[] {
  const engine = createEngine(six, { seed: 1, ambientC: 15 });
  const broadcast = createBroadcast();
  const noise = seeded(1, 'noise');
  const frames: CanFrame[] = [];
  for (let atS = 0; atS <= seconds; atS += 0.05)
    frames.push(
      ...broadcast.framesAt(atS, () => ({
        readings: sensorReadings(engine.state, engine.faults, 15, noise),
        codes: [],
      })),
    );
  return frames;
}

async function fileOf(text: string): Promise<string> {
  const path = join(folder(), 'bus.log');
  await writeFile(path, text);
  return path;
}
const textOf = (frames: readonly CanFrame[]) =>
  frames.map(frame => `${formatCandumpLine(frame, 'can0')}\n`).join('');

const log = await fileOf(textOf(framesOf(20)));
const ENGINE_HOURS_PGN = 0xfee5;

describe('a log of the running vehicle', () => {
  it('tells what the bus gives, from which address and how often, and what stays to be spoken', async () => {
    const survey = await surveyLog(log);
    expect(survey.engines).toEqual([0]);
    const sent = survey.readings.flatMap(reading => (reading.kind === 'sent' ? [reading] : []));
    expect(sent.map(({ quantity }) => quantity)).toEqual(
      expect.arrayContaining(['engineSpeed', 'oilPressure', 'coolantTemperature', 'batteryVoltage']),
    );
    expect(sent.find(({ quantity }) => quantity === 'oilPressure')?.everyS).toBeCloseTo(0.5, 1);
    const lines = surveyLines(survey).join('\n');
    expect(lines).toMatch(/engine speed: SPN 190 from address 0, every 0\.1 s, 0 rpm to 0 rpm in this log/);
    expect(lines).toContain('lamps and codes: every 1 s.');
    expect(lines).toContain('The bit rate stands in no log');
  });

  it('of an engine that does not send everything leaves the rest to be spoken', async () => {
    const OIL_PRESSURE_PGN = 0xfeef;
    const AMBIENT_PGN = 0xfef5;
    const pgn = ({ id }: CanFrame) => (id >> 8) & 0xffff;
    const frames = framesOf(20)
      .filter(frame => pgn(frame) !== OIL_PRESSURE_PGN && pgn(frame) !== ENGINE_HOURS_PGN)
      .map(frame => (pgn(frame) === AMBIENT_PGN ? { ...frame, data: frame.data.map(() => 0xff) } : frame));
    const survey = await surveyLog(await fileOf(textOf(frames)));
    const kinds = Object.fromEntries(survey.readings.map(({ quantity, kind }) => [quantity, kind]));
    expect(kinds).toMatchObject({
      engineSpeed: 'sent',
      oilPressure: 'notSent',
      ambientTemperature: 'notAvailable',
    });
    expect(surveyLines(survey).join('\n')).toContain('oil pressure: stays to be spoken, nobody sends it.');
  });

  it('is written into a profile, with where it comes from and the next version', async () => {
    const path = join(folder(), 'mine.json');
    const { bus, ...silent } = six;
    await writeProfile(path, { ...silent, overspeedRpm: bus?.overspeedRpm });
    const survey = await surveyLog(log);
    await writeBus(survey, path);
    const profile = await loadProfile(path);
    expect(profile.version).toBe(six.version + 1);
    expect(profile.bus).toMatchObject({ engineAddress: 0, overspeedRpm: six.bus?.overspeedRpm });
    expect(profile.bus?.readings).toContain('oilPressure');
    expect(profile.provenance.bus).toEqual({ from: 'measured', rule: 'a log of the bus over 20 s' });
  });

  it('is kept for an interview that is not finished, and makes the profile that comes of it', async () => {
    const path = join(folder(), 'mine.json');
    const whole = randomInterview(3);
    await keepAnswers(path, Object.fromEntries(Object.entries(whole).slice(0, 12)));
    expect(await writeBus(await surveyLog(log), path)).toEqual([
      `Kept for the interview: npm start -- engine new ${path}`,
    ]);
    let answers = await keptAnswers(path);
    expect(answers.busAddress).toMatchObject({ value: 0, origin: { from: 'measured' } });
    for (let next = nextQuestion(answers); next; next = nextQuestion(answers)) {
      const { question, proposal } = next;
      expect(question.id).not.toBe('bus');
      const answer = whole[question.id] ?? proposal;
      if (!answer) throw new Error(`Nothing was answered to ${question.id}.`);
      answers = withAnswer(answers, question.id, answer);
    }
    expect(buildProfile(answers).bus?.readings).toContain('oilPressure');
  });

  it('goes nowhere where there is neither', async () => {
    await expect(writeBus(await surveyLog(log), join(folder(), 'none.json'))).rejects.toThrow(
      /none\.json.*no such profile, and no interview was begun/s,
    );
  });
});

describe('what is no log of a running engine gets one sentence', () => {
  const frames = framesOf(20);
  const SPEED_PGN = 0xf004;
  it.each([
    ['an empty file', '', /is empty; record one/],
    ['a text', 'Dear diary,\ntoday it would not start.\n', /is no log of candump/],
    ['the middle of a binary file', '\u0000\u0001\u0002'.repeat(5000), /is no log of candump/],
    ['a log half of which is rubbish', `${textOf(frames.slice(0, 20))}${'?\n'.repeat(50)}`, /is damaged: /],
    [
      'another bus',
      textOf(frames.map(frame => ({ ...frame, id: 0x123, extended: false }))),
      /holds no J1939 data/,
    ],
    [
      'a vehicle without an engine',
      textOf(frames.filter(({ id }) => ((id >> 8) & 0xffff) !== SPEED_PGN)),
      /holds no engine speed/,
    ],
    [
      'too short a log',
      textOf(frames.filter(({ timeS }) => timeS < 5)),
      /covers only .* s; record 10 s or more/,
    ],
  ])('%s', async (_, text, sentence) => {
    const failure: unknown = await surveyLog(await fileOf(text)).catch((error: unknown) => error);
    expect(failure).toBeInstanceOf(Error);
    if (failure instanceof Error) expect(failure.message).toMatch(sentence);
  });

  it('a file that is not there', async () => {
    await expect(surveyLog(join(folder(), 'nothing.log'))).rejects.toThrow(/could not be read .*ENOENT/);
  });
});
