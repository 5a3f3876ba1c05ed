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
  lockedOut: ['locked out', 'it is locked out'],
  breakerOpen: ['breaker is open', 'breaker open'],
  inNeutral: ['lever in neutral', 'it is in neutral'],
  uncoupled: ['coupling open', 'coupling is open'],
  cutOffReady: ['cut off ready', 'cut off is ready'],
  thatWasTheDrill: ['that was the drill', 'drill'],

  mixReady: ['mix is ready', 'mix ready'],
  coolantFull: ['coolant full', 'coolant is full'],
  jacketHeaterOff: ['jacket heater off', 'jacket heater is off'],
  noMoreAir: ['no more air', 'air is out'],
  gradeRight: ['grade is right', 'oil is right'],
  filterFitted: ['filter fitted', 'filter is fitted'],
  levelGood: ['level is good', 'oil level good'],
  levelLow: ['oil is low', 'oil low'],
  levelRisen: ['oil has risen', 'level has risen'],
  asBefore: ['as before', 'same as before'],
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

  valveClosed: ['valve is closed', 'valve closed'],
  strainerClean: ['water side good', 'water side is good'],
  waterFlows: ['water is flowing', 'water flows'],
  staysDry: ['exhaust stays dry', 'it stays dry'],
  regenerationOff: ['regeneration off', 'regeneration is off'],

  starterIsolated: ['starter isolated', 'starter is isolated'],
  prelubeDone: ['oil pumped in', 'oil is pumped in'],
  turboFed: ['turbo oiled', 'turbo is oiled'],
  oilFed: ['both are oiled', 'galleries and turbo oiled'],
  turnsFree: ['turns freely', 'it turns freely'],
  itBinds: ['it binds', 'something binds'],
  barringToolOut: ['bar is out', 'bar out and starter connected'],

  fuellingDisabled: ['fuelling disabled', 'fuelling is disabled'],
  provedOff: ['proved off', 'it is proved'],
  clearToCrank: ['clear to crank', 'all clear'],
  noTester: ['no tester', 'without a tester'],
  inManual: ['mode in manual', 'mode is in manual'],
  oilPressureShows: ['pressure shows', 'we have pressure'],
  nothingYet: ['nothing yet', 'no pressure', 'no start'],
  fuellingRestored: ['fuelling restored', 'fuelling is restored'],

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

  hunting: ['hunting', 'idle is hunting'],
  pointGood: ['good here', 'dry and tight'],
  stillLooking: ['not yet', 'still looking'],
  somethingWrong: ['problem', 'not good'],
  leak: ['there is a leak', 'leak'],
  weep: ['only a weep', 'it weeps'],
  spray: ['it sprays', 'spraying'],
  valveNoise: ['valve noise', 'some valve noise'],
  knocking: ['knocking', 'it knocks'],
  squealing: ['squealing', 'it squeals'],
  whiteSmoke: ['white smoke', 'smoke is white'],
  blueSmoke: ['blue smoke', 'smoke is blue'],
  blackSmoke: ['black smoke', 'smoke is black'],
  thickSmoke: ['thick smoke', 'smoke is thick'],
  leaveOpen: ['open item', 'leave it as an open item'],
  thermostatOpen: ['thermostat open', 'upper hose is hot'],
  noBubbles: ['no bubbles', 'no more bubbles'],
  levelsGood: ['levels good', 'levels are good'],
  stillRunning: ['still running', 'it keeps running'],
  engineOff: ['engine is off', 'engine off'],
  torqued: ['torqued', 'torque done'],
  handedBack: ['all handed back', 'everything is handed back'],
  itemsNoted: ['items noted', 'noted'],
  iSign: ['i sign', 'signed'],

  allOff: ['all is off', 'engine and key off'],
  endSession: ['end the session', 'give up for today'],
  causeFalseAlarm: ['false alarm'],
  causeCoolantLeak: ['coolant leak'],
  causeCoolantInCylinder: ['coolant in a cylinder', 'water in a cylinder'],
  causeOilLeak: ['oil leak'],
  causeFuelLeak: ['fuel leak'],
  causeNoOilPressure: ['no oil pressure'],
  causeNoStart: ['engine would not start', 'would not start'],
  causeOverspeed: ['overspeed', 'engine ran away'],
  causeOverheating: ['overheating', 'too hot'],
  causeFaultCode: ['fault code'],
  causeSmokeOrFire: ['smoke or fire', 'smoke', 'fire'],
  causeSomeoneHurt: ['someone is hurt', 'injury'],
  causeKnocking: ['knocking', 'it knocks'],
  causeLooseOrNoise: ['something loose', 'strange noise'],
  causeOther: ['another cause', 'something else'],

  oneByOne: ['one by one', 'one at a time'],
  mixedAndFull: ['coolant mixed and full', 'coolant is mixed and full'],
  bottlesGood: ['no air and steering full', 'no air in it and steering full'],
  gradeAndFilterRight: ['grade and filter right', 'grade and filter are right'],
  /** Of older records. */
  steeringAndLevels: ['no bubbles and levels good', 'no bubbles and levels are good'],
  fuelAndFiltersRight: ['fuel and filters right', 'fuel and filters are right'],
  soundAndSmoke: ['sound and smoke good', 'sound and smoke are good'],
  bootsSoundSmell: ['boots noise and smell all good', 'boots noise and smell are all good'],
  coldFull: ['coolant and steering full', 'coolant and steering are full'],
  primerDone: ['primer firm and home', 'primer is firm and home'],
  frontGood: ['hoses boots and belts good', 'hoses boots and belts are good'],
  wiringAndFasteners: ['wiring and fasteners good', 'wiring and fasteners are good'],
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
export const affirmatives = ['yes', 'okay', 'done', 'good', 'correct'] as const;

/** Words that are always understood; which of them do something depends on the moment. */
export const controls = {
  hold: ['hold', 'hold on', 'wait a moment'],
  continue: ['continue', 'go on', 'carry on'],
  sayAgain: ['say again', 'repeat', 'say that again'],
  goBack: ['go back', 'one step back'],
  takeBack: ['wrong', 'that is wrong'],
  skip: ['pass over this', 'skip this'],
  status: ['where are we'],
  timeLeft: ['time left', 'how long', 'how much time'],
  help: ['help', 'what can i say'],
} as const satisfies Record<string, readonly [string, ...string[]]>;

/** What is taken for a control word at the keys as well, and sounds too much like another to be listened for. */
export const typedControls = { skip: ['skip'], status: ['status'] } as const satisfies Partial<
  Record<keyof typeof controls, readonly string[]>
>;
