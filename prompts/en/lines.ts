/** Sentences that belong to no single step. */
export const lines = {
  welcome: '{profile}. Say help at any time. Say the emergency word at any time.',
  inventedProfile: 'Notice: this is an invented engine for practice.',
  phaseStarts: '{phase}.',
  readBackReply: 'You said {reply}. Correct?',
  readBackValue: '{name}: {spoken}. Correct?',
  andNow: 'And now?',
  readBackList: '{count} of {count} good: {items}. Correct?',
  readBackCode: 'S P N {spn}, F M I {fmi}. Correct?',
  fromBus: 'By the bus:',
  busValue: 'By the bus: {name} {spoken}.',
  readingsDiffer: '{name}: first {before}, now {now}. I take neither.',
  busDiffers: '{name}: you say {spoken}, the bus shows {bus}. Look again, and say what you see.',
  readBackDiffers: '{name}: you say {spoken}, the bus shows {bus}. Is yours correct?',
  lampDiffers: '{name} lamp: you say {spoken}, the bus shows it {bus}. Look again. {name}?',
  readBackBusCodes: 'By the bus, codes: {codes}. Correct?',
  readBackBusNoCodes: 'By the bus, no codes. Correct?',
  stillTurns: 'The bus shows that the engine still turns: {speed}. Key off, and look.',
  busSilent: 'The bus is silent. Go on by voice and keys.',
  busSensorLost: 'The bus gives no {name} any more. Read the gauge.',
  item: '{name}?',
  unclear: 'I did not understand.',
  unclearDigits: 'Digit by digit, please.',
  unclearThrice:
    'Not understood three times. Second person, say it for me, beginning with second, or use the keys.',
  outside: '{name} {spoken}: {limits}. Look again.',
  idleHunting: 'Idle is hunting. Find the cause, then read it again.',
  idleFalling: 'Idle is falling. Find the cause, then read it again.',
  idleRising: 'Idle is rising. Find the cause, then read it again.',
  notCoolYet: '{name} {spoken}, still hot. Leave the cap shut. Look again in {time}.',
  pressureDoesNotFollow: 'Oil pressure does not follow the speed. Say the emergency word, or read it again.',
  boilsAfterKeyOff: 'Coolant may boil after key off. Let it run at idle and cool down.',
  outsideUnjudged: '{name}: {why} Look again.',
  stillOutside: '{name} {spoken} is not accepted: {limits}.',
  inside: '{name} {spoken}, {limits}.',
  lampWrong: '{name} lamp should be {expected}. Put that right, then look again. {name}?',
  notYet: 'Understood, not yet. I wait.',
  voiceTooLoud: 'Too loud for the microphone. Move it away from your mouth.',
  voiceTooFaint: 'Too faint. Move the microphone nearer to your mouth.',
  bayTooNoisy: 'Too noisy here for voice: answer by keys. The emergency word is still listened for.',
  bayQuietEnough: 'Voice can be heard again.',
  bayLoud: 'Loud here. Say numbers figure by figure, and everything else as it is shown.',
  bayLessLoud: 'Less loud now. Say numbers as you like.',

  holdStarts: '{title}: {time}.',
  holdHalf: 'Half time: {time} left.',
  holdTenSeconds: 'Ten seconds.',
  holdDone: '{title}: done.',
  timeLeft: '{time} left.',
  noTimer: 'Nothing is being timed.',
  onHold: 'On hold. Say continue to go on.',
  notWhileCritical: 'Not now: only the emergency word or the reply.',
  goesOn: 'Going on.',
  cannotGoBack: 'There is no going back from here.',
  cannotSkip: 'This step may not be skipped on this engine.',
  skipWhy: 'Skip {title}: why? Say not fitted, done before, or supervisor says so.',
  skipped: 'Skipped: {reason}.',
  status: '{phase}: {title}. {open}',
  statusOpen: 'Open: {gates}.',
  statusNoneOpen: 'No gate is open before first fire.',
  help: 'You may say: {choices}.',
  helpAlways: 'You may say: hold, continue, say again, go back, skip, status, or time left.',
  stillWaiting: 'Still waiting.',

  holdAsked: 'The supervisor asks for a hold.',
  askClear: 'Second person: hands, tools and clothes clear of fan and belts? Say clear to crank.',
  clearTooOld: 'That clear is too old.',
  crankReady: 'Crank on my word, for {burst} at most. Say ready.',
  crankNow: 'Crank now.',
  crankFiveSeconds: 'Five.',
  release: 'Release the starter!',
  sawPressure: 'You said {reply}. Correct?',
  burstOver: 'Burst over. {reply} or nothing yet?',
  rest: 'Let the starter cool: {time}.',
  gateClosed: 'Cranking refused. Not met: {gates}.',
  engineRuns: 'Engine running.',

  codeSpn: 'Suspect parameter number, digit by digit?',
  codeFmi: 'Failure mode, zero to thirty one?',
  codeBlocks: 'Code {spn} {fmi}, {meaning}: blocks. {because}.',
  codeGoOn: 'Code {spn} {fmi}, {meaning}: may go on. {because}.',
  codeWatch: 'Code {spn} {fmi}, {meaning}: watched for {time}. {because}.',
  codeUnknown: 'Code {spn} {fmi}, {meaning}: not in the profile, so it blocks. The supervisor may accept it.',
  anotherCode: 'Read another code, or say no more codes.',
  blockingFault:
    'A blocking fault is open: {fault}. Repair it and read the codes again. Supervisor may accept an unknown code.',
  acceptWhy: 'Supervisor: why is it accepted? Say not fitted, done before, or supervisor says so.',

  tooEarly: 'Too early: {time} to go at least.',
  warmUpLeft: 'About {time} to the thermostat, {low} to {high}.',
  warmUpLeftOpen: 'About {time} to the thermostat, at least {low}.',
  warmUpNoted: 'Noted.',
  warmUpAtThermostat:
    'Warm enough for the thermostat. Feel for the upper hose getting hot from outside, never near the fan.',
  warmUpStuckOpen: 'It levels off too cold: thermostat stuck open?',
  warmUpStuckShut: 'Too hot: thermostat stuck shut?',

  stopHeard: 'Stop! Key off. Stop!',
  stopCause: 'Stop: {cause}! Key off.',
  areAllOff: 'Is the engine off and the key off? Say all is off.',
  askCause: 'What was the cause?',
  askDrill: 'Heard. If that was the drill, say that was the drill.',
  drillDone: 'The emergency word works.',
  causeReadBack: 'Cause: {cause}. Correct?',
  notPossible: 'There is no answer for these figures. Go back and correct them, or end here.',
  fuelToAdd: '{practice}. Tank as it is: {risk}. Add {no1} of number one and {no2} of number two.',
  causeKept: 'Cause noted.',
  afterStop: 'To do again: {steps}. Say ready when it is put right, or end the session.',
  surgery: 'Danger. Injection injury is a surgical emergency: call the emergency number now.',
  hotCap: 'Warning. Never open a hot cap: let it cool down first.',
  fireCall: 'Danger. Fire: everybody out, call the fire service.',
  resumed: 'The tool was restarted. I must know what the engine is doing.',

  signedOff: 'Signed off. Record closed.',
  ended: 'Session ended without sign-off. Record closed.',
} as const satisfies Record<string, string>;

/** A sentence that begins with one of these is a caution (ANSI Z535.6), strongest first. */
export const signalWords = ['danger', 'warning', 'caution', 'notice'] as const;

export const phases = {
  job: 'Job',
  fill: 'Fill',
  prime: 'Prime',
  walkRound: 'Walk-round',
  noFuelCrank: 'Crank without fuel',
  keyOn: 'Key on',
  firstFire: 'First fire',
  checks: 'Running checks',
  warmUp: 'Warm-up',
  sweeps: 'Sweeps',
  shutdown: 'Shutdown',
  signOff: 'Cold recheck and sign-off',
} as const satisfies Record<string, string>;

export const quantities = {
  ambientTemperature: { name: 'air temperature', leads: ['air temperature', 'temperature'] },
  coldestNight: { name: 'coldest night', leads: ['coldest night', 'coldest', 'temperature'] },
  altitude: { name: 'altitude', leads: ['altitude'] },
  coolantFreezePoint: { name: 'freeze point', leads: ['freeze point'] },
  oilQuantity: { name: 'oil filled', leads: ['oil', 'oil filled'] },
  fuelInTank: { name: 'fuel in the tank', leads: ['fuel', 'in the tank'] },
  biodieselShare: { name: 'biodiesel', leads: ['biodiesel'] },
  primerStrokes: { name: 'strokes', leads: ['strokes'] },
  batteryVoltage: { name: 'battery', leads: ['battery', 'battery voltage'] },
  chargingVoltage: { name: 'charging', leads: ['charging', 'charging voltage'] },
  crankingVoltage: { name: 'lowest voltage', leads: ['lowest', 'lowest voltage'] },
  engineSpeed: { name: 'idle speed', leads: ['idle', 'idle speed', 'engine speed'] },
  oilPressure: { name: 'oil pressure', leads: ['oil pressure', 'pressure'] },
  coolantTemperature: { name: 'coolant', leads: ['coolant', 'coolant temperature', 'temperature'] },
  suspectParameter: { name: 'S P N', leads: ['number'] },
  failureMode: { name: 'F M I', leads: ['failure mode', 'mode'] },
} as const satisfies Record<string, { name: string; leads: readonly string[] }>;

export const gates = {
  stopWordsProved: 'emergency words proved',
  peopleSafe: 'people safe',
  coolantReady: 'coolant',
  oilReady: 'oil',
  fuelReady: 'fuel',
  fuelPrimed: 'fuel primed',
  sensorsConnected: 'sensors',
  walkRoundDone: 'walk-round',
  fuellingDisabled: 'fuelling disabled',
  oilPrimed: 'oil primed',
  fuellingRestored: 'fuelling restored',
  batteryReady: 'battery',
  lampsRight: 'lamps',
  heaterHoldDone: 'intake heater',
  noBlockingFault: 'fault codes',
  secondPersonClear: 'second person clear',
  oilPressureShown: 'oil pressure',
  noLeaks: 'no leaks',
  coldLevels: 'levels, cold',
  signature: 'signature',
} as const satisfies Record<string, string>;

export const causes = {
  falseAlarm: 'false alarm',
  drill: 'drill',
  coolantLeak: 'coolant leak',
  oilLeak: 'oil leak',
  fuelLeak: 'fuel leak',
  noOilPressure: 'no oil pressure',
  noStart: 'engine would not start',
  overspeed: 'overspeed',
  overheating: 'overheating',
  faultCode: 'fault code',
  smokeOrFire: 'smoke or fire',
  someoneHurt: 'someone is hurt',
  looseOrNoise: 'something loose, or a strange noise',
  toolRestarted: 'the tool was restarted',
  other: 'another cause',
} as const satisfies Record<string, string>;

export const people = {
  technician: 'technician',
  second: 'second person',
  supervisor: 'supervisor',
} as const satisfies Record<string, string>;

export const inspectPoints = {
  fuelJoints: 'fuel joints and injector lines, paper only',
  coolantJoints: 'coolant hoses and joints',
  oilJoints: 'oil joints and filter',
  boots: 'intake and charge air boots',
  hiss: 'hiss or strange noise',
  smellAndSmoke: 'smell and smoke',
} as const satisfies Record<string, string>;

/** How units are written (short), spoken (long), and what may follow a spoken number. */
export const units = {
  degC: { short: '°C', long: 'degrees Celsius', said: ['degrees', 'degrees celsius', 'celsius'] },
  degF: { short: '°F', long: 'degrees Fahrenheit', said: ['degrees', 'degrees fahrenheit', 'fahrenheit'] },
  m: { short: 'm', long: 'metres', said: ['meters'] },
  ft: { short: 'ft', long: 'feet', said: ['feet'] },
  litre: { short: 'L', long: 'litres', said: ['liters', 'liter'] },
  usQuart: { short: 'qt', long: 'quarts', said: ['quarts', 'quart'] },
  usGallon: { short: 'gal', long: 'gallons', said: ['gallons', 'gallon'] },
  '%': { short: '%', long: 'percent', said: ['percent'] },
  count: { short: '', long: '', said: [] },
  V: { short: 'V', long: 'volts', said: ['volts'] },
  rpm: { short: 'rpm', long: 'R P M', said: ['r p m', 'revs'] },
  kPa: { short: 'kPa', long: 'kilopascals', said: ['kilopascals'] },
  bar: { short: 'bar', long: 'bar', said: ['bar'] },
  psi: { short: 'psi', long: 'P S I', said: ['p s i', 'pounds'] },
  s: { short: 's', long: 'seconds', said: ['seconds'] },
} as const satisfies Record<string, { short: string; long: string; said: readonly string[] }>;

/** Little words for putting sentences together. */
export const words = {
  and: 'and',
  or: 'or',
  none: 'none',
  point: 'point',
  decimalMark: '.',
  minus: 'minus',
  second: 'second',
  seconds: 'seconds',
  secondsOne: 'one second',
  minutes: 'minutes',
  minutesOne: 'one minute',
  /** The number one, and the same before seconds and minutes, where a language tells them apart. */
  one: 'one',
  oneOfTime: 'one',
  exactly: '{value}',
  atLeast: 'at least {value}',
  atMost: 'at most {value}',
  between: '{min} to {max}',
  lit: 'lit',
  dark: 'dark',
} as const satisfies Record<string, string>;

export const fuels = {
  no2: 'Number two serves',
  blend: 'A blend of number one and number two',
  no1: 'Straight number one',
} as const satisfies Record<string, string>;

export const gelling = {
  clear: 'no gelling expected',
  nearCloud: 'near its cloud point',
  belowCloud: 'wax will form',
  belowPour: 'it may set',
} as const satisfies Record<string, string>;

export const glycols = { ethylene: 'ethylene glycol', propylene: 'propylene glycol' } as const;

/**
 * Words for what the calculations name themselves, in English: why there is no value, by the code of the
 * issue, and what an FMI means, by its number. What stands nowhere here is told in their own words.
 */
export const issues: Readonly<Record<string, string>> = {};
export const failureModes: Readonly<Record<string, string>> = {};
