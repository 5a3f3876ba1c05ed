import type { Person } from '../../../../machines/vocabulary.ts';
import { english } from '../../../../prompts/en/index.ts';
import type { FaultName } from '../../../rehearsal/faults.ts';

const people: Readonly<Record<Person, string>> = english.people;

/** Who speaks in the log, by the session's own names. */
const who: Readonly<Record<string, string>> = { says: 'says', heard: 'heard' };

/** The face's own words in English, all in one place; everything else on the screen comes from the session. */
export const en = {
  decimalMark: english.words.decimalMark as string,
  people,
  who,
  quoted: '"{text}"',
  labelled: '{label}: {text}',

  name: 'first-fire',
  modelGone:
    'This was a rehearsal, and the model of its engine is gone: make the readings up, or rehearse anew.',
  rehearsal: 'REHEARSAL',
  invented: 'INVENTED ENGINE, PRACTICE ONLY',
  inventedShort: 'INVENTED ENGINE',
  stopped: 'STOPPED - KEY OFF',
  stoppedLarge: 'STOPPED: KEY OFF',
  mayTurn: 'ENGINE MAY STILL TURN',
  cranking: 'CRANKING',
  running: 'ENGINE RUNNING',
  engineOff: 'Engine off',
  held: 'ON HOLD',
  signedOff: 'SIGNED OFF',
  ended: 'ENDED WITHOUT SIGN-OFF',

  say: 'Say:',
  sayNumber: 'Say a number: {name}, {range}',
  range: '{min} to {max} {unit}',
  nothingAwaited: 'No reply is awaited now.',
  also: 'Also:',
  left: '{time} left',
  leftOf: '{time} left of {total}',

  readings: 'READINGS',
  noReadings: 'none yet',
  readingMet: 'met',
  readingNotMet: 'NOT MET',
  gates: 'BEFORE FIRST FIRE',
  gatesMet: '{met} of {all} met',
  gateMet: 'met',
  gateNotMet: 'NOT MET',
  faults: 'FAULT CODES',
  openItems: 'OPEN ITEMS',
  problem: 'PROBLEM',
  sights: 'ENGINE',
  more: '… {n} more',

  bus: 'Bus:',
  busStates: { notHeard: 'not heard yet', alive: 'ALIVE', silent: 'SILENT', gone: 'GONE' },
  noValue: '--',
  engineEar: 'by ear',
  engineHunts: 'hunts',
  soundChanged: 'sound against first minute',
  hears: 'Ear:',
  microphone: 'microphone',
  keysOnly: 'keys',
  noLevel: 'no level',
  clipping: 'TOO LOUD',
  speech: 'speech',
  speaking: 'SPEAKING',
  heard: 'Heard: {text} ({by})',
  nothingHeard: 'Heard: nothing yet',
  notCounted: 'Heard: NOT UNDERSTOOD {text} ({by})',

  escapeStops: 'Esc = STOP',
  keys: ['Enter = send', 'Ctrl-C twice = leave', 'Up = last line'] as readonly string[],
  leaving: 'Ctrl-C again leaves, any other key stays.',
  leavingRunning: 'Leaving does not stop the engine.',
  leavingByLine: 'Ctrl-C again leaves; type anything to stay.',
  keysEnded: 'The keys have ended; it goes on by voice.',
  nobodyAnswers: 'Nobody can answer any more: there are no keys and there is no microphone.',
  mayType: 'type what you would say',

  /** What there is to see at the engine of a rehearsal. */
  seen: {
    lit: 'lit: {lamps}',
    litAtKeyOn: 'lit: {lamps}; lit at key-on: {atKeyOn}',
    readOff: 'to be read off: {reading}',
    noLamps: 'none',
    seen: 'seen: {sights}',
    between: '; ',
    wet: 'wet at {point}',
    hunts: 'the idle hunts',
    coolantAir: 'air in the coolant',
    steeringAir: 'bubbles in the steering fluid',
    coolantShort: 'coolant below the mark',
    hoseHot: 'upper hose hot',
    hoseCold: 'upper hose cold',
    primerFirm: 'primer firm after {strokes} strokes',
    primerSoft: 'primer soft after {strokes} strokes',
    code: 'code SPN {spn} FMI {fmi}',
  },

  /** What is said after the face has closed. */
  closing: {
    signedOff: 'Signed off.',
    ended: 'Ended without sign-off.',
    left: 'Left before sign-off; go on with: npm start -- resume {goOnWith}',
    record: 'Record: {path}, {entries} entries, last hash {hash}.',
  },

  /** After a rehearsal: how it went. */
  debrief: {
    signedOff: 'Debrief: signed off after {time}.',
    ended: 'Debrief: ended without sign-off after {time}.',
    left: 'Debrief: left before its end, after {time}.',
    counts: 'Faults that came: {came}, missed: {missed}. Replies not understood: {unclear}.',
    noticed: 'NOTICED   {wrong} It came with: {phase}. After {time} the session {how}',
    missed: 'MISSED    {wrong} It came with: {phase}. Nothing that was done shows that it was seen.',
    neverCame: 'NOT COME  {wrong} It was to come with: {phase}; the session did not get there.',
    byStop: 'was stopped for: {what}, at: {step}.',
    byLine: 'warned at: {step}.',
    byReading: 'did not accept the reading at: {step}.',
    byCode: 'judged a fault code of SPN {what}, at: {step}.',
    stop: 'STOP      {time} at: {step}. Cause: {cause}.',
    drill: 'the word was tried out',
    noCause: 'none named',
    saidShown: 'NOT SO    {time} at: {step}. Said: {name} {said}; the gauge showed {shown}.',
    notSo: 'NOT SO    {time} {step}: it was answered as good, and the engine showed otherwise.',
    wrong: {
      noOilPressure: 'The oil pump delivers nothing.',
      slowOilPressure: 'The galleries run empty at rest and fill far too slowly.',
      airInFuel: 'The suction side of the fuel system draws air.',
      huntingIdle: 'The idle speed swings up and down.',
      alternatorDead: 'The alternator charges nothing.',
      thermostatStuckOpen: 'The thermostat stays open.',
      thermostatStuckShut: 'The thermostat stays shut.',
      hoseLetGo: 'A coolant hose lets go after key-off.',
      waterInFuel: 'There is water in the fuel filter.',
      sensorUnplugged: 'The plug of the coolant temperature sensor is off.',
      lampDriverOpen: 'The driver of the first warning lamp is open: the lamp never lights.',
      injectorLineLeak: 'An injector line leaks under pressure.',
    } satisfies Record<FaultName, string>,
  },
};

/** What a language has to bring for the face: what is missing does not compile. */
export type FaceWords = Readonly<typeof en>;
