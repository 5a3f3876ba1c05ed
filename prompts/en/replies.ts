/**
 * What may be said for each reply; the first wording is the one that is asked for and read back.
 * Two wordings that sound alike never mean different things in the same moment, and none that says yes differs from
 * its opposite in one short word only: beside an engine "that is right" is heard where "that is wrong" was said.
 */
export const replies = {
  yes: ['correct', 'yes', 'affirmative'],
  no: ['wrong', 'no', 'that is wrong', 'negative'],
  ready: ['ready', 'we are ready', 'i am ready'],
  notYet: ['not yet', 'not good', 'problem'],

  cardRight: ['card is right'],
  understood: ['understood', 'i understand'],
  protectionOn: ['protection on', 'protection is on'],
  airGood: ['air is good', 'extraction running'],
  extinguisherReady: ['extinguisher ready', 'extinguisher is here'],
  vehicleSecured: ['vehicle secured', 'vehicle is secured'],
  cutOffReady: ['cut off ready', 'cut off is ready'],
  thatWasTheDrill: ['that was the drill', 'drill'],

  mixReady: ['mix is ready', 'mix ready'],
  coolantFull: ['coolant full', 'coolant is full'],
  noMoreAir: ['no more air', 'air is out'],
  gradeRight: ['grade is right', 'oil is right'],
  filterFitted: ['filter fitted', 'filter is fitted'],
  levelGood: ['level is good', 'oil level good'],
  fuelRight: ['fuel is right', 'fuel is good'],
  steeringFull: ['steering full', 'steering is full'],
  primerFirm: ['primer firm', 'primer is firm'],
  screwedHome: ['screwed home', 'primer screwed home'],
  noWeeps: ['no weeps', 'all dry'],

  pluggedIn: ['plugged in', 'connected'],
  hosesGood: ['hoses good', 'hoses are good'],
  bootsGood: ['boots good', 'boots are good'],
  beltsGood: ['belts good', 'belts are good'],
  toolsOut: ['all clear of tools', 'tools are out'],
  wiringGood: ['wiring good', 'wiring is good'],
  fastenersMarked: ['fasteners marked', 'fasteners are marked'],

  fuellingDisabled: ['fuelling disabled', 'fuelling is disabled'],
  provedOff: ['proved off', 'it is proved'],
  clearToCrank: ['clear to crank', 'all clear'],
  oilPressureShows: ['pressure shows', 'we have pressure'],
  nothingYet: ['nothing yet', 'no pressure', 'no start'],
  fuellingRestored: ['fuelling restored', 'fuelling is restored'],

  keyIsOn: ['key is on', 'key on'],
  lit: ['lit'],
  dark: ['dark'],
  lampOut: ['lamp is out', 'lamp out'],
  lampStays: ['lamp stays on', 'still lit'],
  noCodes: ['no codes', 'no fault codes'],
  readACode: ['read a code', 'one code', 'another code'],
  noMoreCodes: ['no more codes', 'that was all'],
  acceptFault: ['supervisor accepts', 'fault accepted'],

  fired: ['fired', 'engine running', 'it runs'],
  pressureGood: ['pressure good', 'pressure is good', 'oil pressure good'],
  noOilPressure: ['no pressure', 'no oil pressure'],
  faultCleared: ['fault cleared', 'it has cleared'],

  idleSteady: ['idle steady', 'idle is steady'],
  hunting: ['hunting', 'idle is hunting'],
  pointGood: ['good here', 'dry and tight'],
  leak: ['leak', 'there is a leak'],
  thermostatOpen: ['thermostat open', 'upper hose is hot'],
  noBubbles: ['no bubbles', 'no more bubbles'],
  levelsGood: ['levels good', 'levels are good'],
  backAtIdle: ['back at idle', 'at idle'],
  stillRunning: ['still running', 'it keeps running'],
  engineOff: ['engine is off', 'engine off'],
  torqued: ['torqued', 'torque done'],
  itemsNoted: ['items noted', 'noted'],
  iSign: ['i sign', 'signed'],

  allOff: ['all is off', 'engine and key off'],
  endSession: ['end the session', 'give up for today'],
  causeFalseAlarm: ['false alarm'],
  causeCoolantLeak: ['coolant leak'],
  causeOilLeak: ['oil leak'],
  causeFuelLeak: ['fuel leak'],
  causeNoOilPressure: ['no oil pressure'],
  causeNoStart: ['engine would not start', 'would not start'],
  causeOverspeed: ['overspeed', 'engine ran away'],
  causeOverheating: ['overheating', 'too hot'],
  causeFaultCode: ['fault code'],
  causeSmokeOrFire: ['smoke or fire', 'smoke', 'fire'],
  causeSomeoneHurt: ['someone is hurt', 'injury'],
  causeLooseOrNoise: ['something loose', 'strange noise'],
  causeOther: ['another cause', 'something else'],

  oneByOne: ['one by one', 'one at a time'],
  bothFilters: ['both filters fitted', 'both filters are fitted'],
  primerDone: ['primer firm and home', 'primer is firm and home'],
  frontGood: ['hoses boots and belts good', 'hoses boots and belts are good'],
  wiringAndFasteners: ['wiring and fasteners good', 'wiring and fasteners are good'],
  oilAndSteering: ['oil and steering good', 'oil and steering are good'],
  firstSensors: ['first sensors plugged in', 'first sensors are plugged in'],
  secondSensors: ['next sensors plugged in', 'next sensors are plugged in'],
  thirdSensors: ['third sensors plugged in', 'third sensors are plugged in'],
  fourthSensors: ['last sensors plugged in', 'last sensors are plugged in'],
  firstLamps: ['first lamps as named', 'first lamps are as named'],
  secondLamps: ['next lamps as named', 'next lamps are as named'],
  thirdLamps: ['last lamps as named', 'last lamps are as named'],
  firstLampsRunning: ['first lamps now as named', 'first lamps are now as named'],
  secondLampsRunning: ['next lamps now as named', 'next lamps are now as named'],
  thirdLampsRunning: ['last lamps now as named', 'last lamps are now as named'],
  firstTorqued: ['first ones torqued', 'first ones are torqued'],
  secondTorqued: ['next ones torqued', 'next ones are torqued'],
  thirdTorqued: ['last ones torqued', 'last ones are torqued'],
  notMeasured: ['not measured', 'nobody measured it'],

  reasonNotFitted: ['not fitted'],
  reasonDoneBefore: ['done before', 'already done'],
  reasonSupervisor: ["supervisor's order", 'supervisor says so'],
} as const satisfies Record<string, readonly [string, ...string[]]>;

/** Wordings that stop everything, from anybody, in every state. */
export const stopWordings = [
  'stop',
  'stop stop',
  'stop it',
  'stop now',
  'stop the engine',
  'emergency stop',
  'shut it down',
  'shut down now',
  'kill it',
  'kill the engine',
] as const;

/**
 * What stands for the reply that is asked for: by keys and touch, and by voice only where nothing hangs on it, as
 * "not good" may lose its first word beside an engine.
 */
export const affirmatives = ['yes', 'ok', 'okay', 'done', 'good', 'correct'] as const;

/** Words that are always understood; which of them do something depends on the moment. */
export const controls = {
  hold: ['hold', 'wait', 'hold on'],
  continue: ['continue', 'go on', 'carry on'],
  sayAgain: ['say again', 'repeat', 'say that again'],
  goBack: ['go back', 'one step back'],
  takeBack: ['wrong', 'that is wrong'],
  skip: ['skip', 'skip this'],
  status: ['status', 'where are we'],
  timeLeft: ['time left', 'how long', 'how much time'],
  help: ['help', 'what can i say'],
} as const satisfies Record<string, readonly [string, ...string[]]>;
