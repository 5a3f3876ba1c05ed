import { candumpFile } from '../../bus/sources/candump-file.ts';
import { type Answers, withAnswer } from '../../interview/interview.ts';
import { loadProfile, ProfileError } from '../../profile/load.ts';
import type { Origin } from '../../profile/provenance.ts';
import { type Profile, profileSchema, stopsFromRpm, type VehicleBus } from '../../profile/schema.ts';
import { shownAs } from '../../report/format.ts';
import { mannerOf } from '../../report/manner.ts';
import { createSurvey, type Survey, type Surveyed } from '../../session/vehicle/survey.ts';
import { OptionError } from '../run/options.ts';
import { answersPath, exists, keepAnswers, keptAnswers, writeProfile } from './profile-file.ts';

/** A log of less says little of what is sent every few seconds. */
const SHORTEST_S = 10;

/** A line in the middle that was cut off is no reason to refuse a log; one in ten is. */
const FEWEST_FRAMES_A_LINE = 10;

/** What the bus may give and has to be spoken all the same; the bus is then held against it. */
const SPOKEN: VehicleBus['spoken'] = ['ambientTemperature'];

/**
 * Looks through a log of the running vehicle.
 * @throws OptionError, one sentence, where it cannot be read, is no log of candump, or holds no engine
 */
export async function surveyLog(path: string): Promise<Survey> {
  const survey = createSurvey();
  let rubbish = 0;
  const end = await candumpFile(path).run(
    frame => survey.push(frame),
    notice => {
      if (notice.kind === 'rubbish') rubbish = notice.count;
    },
  );
  const refuse = (sentence: string): never => {
    throw new OptionError(`${path} ${sentence}`);
  };
  if (end.kind === 'lost') throw new OptionError(end.reason);
  const found = survey.result();
  if (found.frames === 0)
    return refuse(
      rubbish > 0
        ? 'is no log of candump; record one with "candump -L can0 > FILE" while the engine runs.'
        : 'is empty; record one with "candump -L can0 > FILE" while the engine runs.',
    );
  if (rubbish * FEWEST_FRAMES_A_LINE > found.frames)
    return refuse(
      `is damaged: ${rubbish} lines of it or more cannot be read, beside ${found.frames} that can; record it again.`,
    );
  if (found.extended === 0)
    return refuse('holds no J1939 data, only short identifiers; log the bus that the engine itself is on.');
  if (found.engines.length === 0)
    return refuse(
      'holds no engine speed; record it while the engine runs, on the bus that its controller is on.',
    );
  if (found.spanS < SHORTEST_S)
    return refuse(
      `covers only ${found.spanS.toFixed(1)} s; record ${SHORTEST_S} s or more, as some things are sent every few seconds.`,
    );
  return found;
}

/** As a log names them, whatever the procedure reads them for. */
const names: Readonly<Record<Surveyed['quantity'], string>> = {
  engineSpeed: 'engine speed',
  oilPressure: 'oil pressure',
  coolantTemperature: 'coolant temperature',
  batteryVoltage: 'battery voltage',
  chargingVoltage: 'charging voltage',
  ambientTemperature: 'ambient temperature',
};

const manner = mannerOf('en', 'metric');

const seconds = (s: number) => `${Number(s.toPrecision(2))} s`;

const why: Readonly<Record<Exclude<Surveyed['kind'], 'sent'>, string>> = {
  notSent: 'nobody sends it',
  notAvailable: 'it is sent as "not available"',
  inError: 'its sensor is in error',
  impossible: 'what is sent cannot be',
  tooRare: 'it is sent too rarely to act on',
};

function readingLine(reading: Surveyed): string {
  const name = names[reading.quantity];
  if (reading.kind !== 'sent') return `  ${name}: stays to be spoken, ${why[reading.kind]}.`;
  const shown = shownAs(reading.unit, manner);
  const { spn, source, everyS, min, max } = reading;
  return `  ${name}: SPN ${spn} from address ${source}, every ${seconds(everyS)}, ${shown.value(min)} to ${shown.value(max)} in this log.`;
}

/** What was found, and what would be written, a line each. */
export function surveyLines(survey: Survey): string[] {
  const { spanS, frames, senders, engines, readings, lampsEveryS } = survey;
  const [engine, ...others] = engines;
  return [
    `${frames} frames in ${Math.round(spanS)} s, sent from ${senders.length === 1 ? 'address' : 'the addresses'} ${senders.join(', ')}.`,
    `The engine's controller has address ${engine}: it sends the engine speed.`,
    ...(others.length > 0
      ? [
          `Addresses ${others.join(', ')} send one too, more rarely: see which controller is the engine's own.`,
        ]
      : []),
    ...readings.map(readingLine),
    lampsEveryS === null
      ? '  lamps and codes: stay to be spoken, the engine sends none.'
      : `  lamps and codes: every ${seconds(lampsEveryS)}.`,
    'The bit rate stands in no log: the usual 250 000 bit/s is taken.',
  ];
}

const measured = (survey: Survey): Origin => ({
  from: 'measured',
  rule: `a log of the bus over ${Math.round(survey.spanS)} s`,
});

const sentIn = ({ readings }: Survey): VehicleBus['readings'] =>
  readings.flatMap(({ quantity, kind }) => (kind === 'sent' ? [quantity] : []));

/** The answers of an interview, with what the log says of the bus. */
function answeredBy(survey: Survey, answers: Answers): Answers {
  const origin = measured(survey);
  return [
    ['bus', true] as const,
    ['busReadings', sentIn(survey)] as const,
    ['busAddress', survey.engines[0] ?? 0] as const,
  ].reduce((all, [id, value]) => withAnswer(all, id, { value, origin }), answers);
}

function profileWith(survey: Survey, profile: Profile, source: string): Profile {
  const overspeedRpm = stopsFromRpm(profile);
  if (overspeedRpm === undefined)
    throw new ProfileError(source, [
      'names no overspeedRpm, the speed at which the bus stops the engine; write it in first.',
    ]);
  const readings = sentIn(survey);
  if (readings.length === 0)
    throw new ProfileError(source, [
      'gains nothing: the bus of this log gives no reading often enough to act on.',
    ]);
  const bus: VehicleBus = {
    bitRate: profile.bus?.bitRate ?? 250_000,
    engineAddress: survey.engines[0] ?? 0,
    readings,
    spoken: (profile.bus?.spoken ?? SPOKEN).filter(quantity => readings.includes(quantity)),
    overspeedRpm,
  };
  return profileSchema.parse({
    ...profile,
    version: profile.version + 1,
    bus,
    provenance: { ...profile.provenance, bus: measured(survey) },
  });
}

/**
 * Writes what the log says of the bus into a profile, and into the interview that it came from or that is not finished.
 * @returns what was done, a sentence each
 * @throws ProfileError where there is neither, or they cannot be written
 */
export async function writeBus(survey: Survey, into: string): Promise<string[]> {
  const answers = await keptAnswers(into);
  const interviewed = Object.keys(answers).length > 0;
  const there = await exists(into);
  if (!interviewed && !there)
    throw new ProfileError(into, [
      `cannot take it: there is no such profile, and no interview was begun for it; "engine new ${into}" begins one.`,
    ]);
  const done: string[] = [];
  if (there) {
    const profile = profileWith(survey, await loadProfile(into), into);
    await writeProfile(into, profile);
    done.push(`Written into ${into}, version ${profile.version}.`);
  }
  if (interviewed) {
    await keepAnswers(into, answeredBy(survey, answers));
    done.push(
      there
        ? `Its interview, ${answersPath(into)}, knows it too.`
        : `Kept for the interview: npm start -- engine new ${into}`,
    );
  }
  return done;
}
