/**
 * What each value of a profile is, why the start needs it, and where it is found: the one source of the published
 * JSON Schema, of the page of all fields, and of what the interview says beside its questions.
 */

interface Field {
  /** What the start does with it. */
  readonly why: string;
  /** Where in a manual, or on the engine, it is found. */
  readonly where: string;
  readonly unit?: string;
}

/** A value; what it is called stands in the words of each language (`prompts/<code>/values.ts`). */
const known = (why: string, where: string, unit?: string): Field =>
  unit === undefined ? { why, where } : { why, where, unit };

interface Part extends Field {
  /** What it is, in a few words. */
  readonly what: string;
}

const field = (what: string, why: string, where: string, unit?: string): Part => ({
  what,
  ...known(why, where, unit),
});

const MODEL = 'in no manual: a figure of the calculation; leave it as proposed unless you measured it';

/** The parts of a profile, in the order of the start. */
export const sections = {
  engine: 'The engine',
  coolant: 'Coolant',
  oil: 'Oil',
  fuel: 'Fuel',
  fuelling: 'How it is kept from firing',
  cutOff: 'Emergency cut-off',
  prelube: 'Oil by pump before it turns',
  firstRun: 'Short first run',
  heater: 'Intake heater or glow plugs',
  starter: 'Starter',
  priming: 'Oil pump and galleries',
  oilPressure: 'Oil pressure',
  idle: 'Idle',
  charging: 'Charging',
  thermostat: 'Thermostat',
  warmUp: 'Warm-up',
  shutdown: 'Shutdown',
  walkRound: 'Second person',
  bus: 'Vehicle bus',
  provenance: 'Where each value comes from',
} as const satisfies Record<string, string>;

export type Section = keyof typeof sections;

/** Every value that has an origin of its own, by its path. */
export const fields = {
  'engine.name': known('it stands in the record', 'data plate'),
  'engine.cylinders': known('it tells the engine apart in the record', 'data plate'),
  'engine.displacementL': known(
    'how fast it can warm and cool at all: what is read against that is questioned',
    'data plate, or the specifications on the first pages',
    'litre',
  ),
  use: known(
    'what is secured before it turns: a vehicle, a breaker and automatic start, a gear lever, a coupling',
    'you know: a vehicle, a generating set, a boat, a pump or another machine',
  ),
  exhaust: known(
    'with raw water in it the cock is shut while it cranks without firing, so that it does not fill',
    'on the engine: water comes out with the exhaust',
  ),
  afterTreatment: known('no regeneration beside joints that nobody has looked at', 'on the exhaust'),
  steering: known('its fluid is filled, bled and looked at', 'on the vehicle'),
  fixedSpeedRpm: known(
    'an engine that runs at one speed has no idle and no sweeps',
    'data plate of a generating set: 1500 rpm for 50 Hz, 1800 for 60 Hz',
    'rpm',
  ),
  systemVoltage: known('every limit of a voltage', 'starter or alternator plate', 'V'),
  turbo: known('its bearings want oil before they turn', 'on the engine'),
  cutOff: known(
    'both people have it in hand before anything turns',
    'on the engine: shut-off lever, fuel cock, air flap; manual, emergency stop',
  ),
  stopControl: known(
    'it is named in every call-out, and where it is switched off',
    'on the panel or at the helm: what stops it every day, as one would call it',
  ),
  jacketHeater: known(
    'it burns out dry: off until the engine is filled and bled, given back at the end',
    'on the block: a heater on the mains, of standby sets above all',
  ),
  overspeedRpm: known(
    'an engine that runs away is stopped at this speed, by voice and by the bus',
    'manual, specifications: overspeed setting; else a tenth above the highest speed without load',
    'rpm',
  ),
  'fuelling.disabledBy': known(
    'how fuelling is disabled, and how that is proved, before it is cranked for oil',
    'fuel system: electronic injection, rack lever, or a solenoid: unplugged it shuts off, or it shuts off only while it has current',
  ),
  'fuelling.at': known(
    'it is named when it is disabled, proved and restored',
    'on the engine, or the manual, fuel system',
  ),

  'coolant.kind': known('how much of it stands the coldest night', 'manual, fluids and capacities'),
  'coolant.systemVolumeL': known(
    'how much concentrate and water to fill in',
    'manual, fluids and capacities: with radiator and heater',
    'litre',
  ),
  'coolant.concentrateShare': known(
    'how much of the can makes the mix',
    'label of the coolant',
    'share by volume',
  ),
  'coolant.minShare': known(
    'weaker coolant does not keep rust and pitting away',
    'manual, coolant: allowed mix',
    'share by volume',
  ),
  'coolant.maxShare': known(
    'stronger coolant carries less heat and freezes sooner again',
    'manual, coolant: allowed mix',
    'share by volume',
  ),
  'coolant.freezeMarginK': known('the mix freezes so much below it', 'common practice', 'K'),
  'coolant.capPressureKpa': known(
    'where the coolant boils here, and so how hot it may be switched off',
    'stamped on the cap',
    'kPa',
  ),
  'coolant.bleedHoldS': known(
    'air that stays under the head boils it',
    'manual, filling the cooling system',
    's',
  ),

  'oil.capacityL': known('how much goes in at first', 'manual, fluids and capacities: with filter', 'litre'),
  'oil.toleranceL': known(
    'more or less than this is asked again before the dipstick',
    'dipstick: between its marks, halved',
    'litre',
  ),
  'oil.grades': known(
    'which of them suits the coldest night, and how long oil takes to the gauge',
    'manual, oil: chart of grades by temperature ("10W-30 below 0 °F"); viscosities from the data sheet of the oil',
  ),
  'oil.runningC': known('the grade is judged at it', MODEL, 'degC'),
  'oil.minRunningViscosityMm2S': known(
    'thinner oil does not carry the bearings',
    'manual, oil; else the least that its grade promises',
    'mm2/s',
  ),
  'oil.fullFlowViscosityMm2S': known('how much longer cold oil takes to the gauge', MODEL, 'mm2/s'),
  'oil.filter': known('how it is fitted', 'manual, oil filter: filled first where it hangs'),

  'fuel.tankL': known(
    'how much No. 1 to add for the cold',
    'manual, fluids and capacities; plate of the tank',
    'litre',
  ),
  'fuel.no1CloudC': known('the blend for the coldest night', 'supplier of the fuel', 'degC'),
  'fuel.no2CloudC': known('the blend for the coldest night', 'supplier of the fuel', 'degC'),
  'fuel.cloudMarginK': known('the fuel clouds so much below it', 'common practice', 'K'),
  'fuel.straightNo1BelowC': known(
    'what the trade would fill, said beside the blend',
    'common practice',
    'degC',
  ),
  'fuel.biodieselMaxPercent': known('more of it is refused', 'manual, fuel; label at the filler', '%'),
  'fuel.sulphurMaxPpm': known(
    'after-treatment is ruined by more',
    'manual, fuel; label at the filler',
    'ppm',
  ),
  'fuel.filters': known(
    'how each is fitted: nothing dirty may get behind the last',
    'manual, fuel filter: dry or pre-filled',
  ),
  'fuel.primer.kind': known('strokes are counted, or a pump is let run', 'on the engine, at the fuel filter'),
  'fuel.primer.runS': known(
    'it runs so long before it is looked at',
    'manual, bleeding the fuel system',
    's',
  ),
  'fuel.primer.maxStrokes': known(
    'more than this means air that comes in somewhere',
    'manual, bleeding the fuel system',
    'strokes',
  ),

  prelube: known('bearings have oil before the first turn', 'manual, oil system: gallery plug'),
  firstRun: known(
    'what leaks is found within minutes, on an engine that stands',
    'manual, first start after an overhaul',
  ),
  sensors: known('each plug is looked at by name', 'wiring diagram; on the engine'),
  lamps: known(
    'each is looked at with the key on, and running',
    'manual, instruments; turn the key and look',
  ),
  heater: known('how long to wait for the lamp before cranking', 'manual, starting: preheating'),

  'starter.crankingRpm': known(
    'when oil pressure can come at the earliest, and is late',
    'manual, starting; or measured',
    'rpm',
  ),
  'starter.longestBurstS': known(
    'the starter is ruined by longer ones',
    'manual, starting: never longer than',
    's',
  ),
  'starter.minRestS': known(
    'the starter cools before the next one',
    'manual, starting: wait between tries',
    's',
  ),
  'starter.burstsInARow': known(
    'then the starter has to cool down',
    'manual, starting: tries before it has to cool',
  ),
  'starter.limitC': known('the thermal budget of the starter', MODEL, 'degC'),
  'starter.ratedAmbientC': known('on hotter days less', MODEL, 'degC'),
  'starter.timeConstantS': known('how fast it cools', MODEL, 's'),
  'starter.maxBursts': known('more of them hide what is wrong', 'common practice'),

  'priming.pumpLitrePerTurn': known(
    'seconds of cranking to oil pressure',
    'manual, oil pump; or its gears measured',
    'litre',
  ),
  'priming.pumpTurnsPerCrankTurn': known('seconds of cranking to oil pressure', 'teeth of its drive counted'),
  'priming.fillLitres': known(
    'seconds of cranking to oil pressure',
    'measured: what the sump lacks after the first crank',
    'litre',
  ),
  'priming.fillSpreadShare': known('earliest and latest time', MODEL, 'share'),
  'priming.leastEfficiency': known('the latest time', MODEL, 'share'),
  'priming.greatestEfficiency': known('the earliest time', MODEL, 'share'),
  'priming.giveUpMultiple': known('cranking ends, and the cause is looked for', MODEL),
  'priming.holdS': known('one flicker of a needle is no pressure', 'common practice', 's'),

  'oilPressure.firstFireWithinS': known(
    'later than this the engine is stopped',
    'manual, starting: stop if no pressure within',
    's',
  ),
  'oilPressure.gaugeMaxKpa': known('no number above it is listened for', 'on the gauge', 'kPa'),
  'oilPressure.showsKpa': known(
    'below it the needle may only lie',
    'gauge: first mark; or the switch of the lamp',
    'kPa',
  ),
  'oilPressure.reliefKpa': known('a higher reading is doubted', 'manual, oil system: relief valve', 'kPa'),
  'oilPressure.floor': known(
    'below it the engine is stopped',
    'manual, specifications: least oil pressure at idle and at rated speed',
    'kPa',
  ),
  'idle.cold': known('idle is judged by it', 'manual, specifications; or the plate', 'rpm'),
  'idle.warm': known('idle is judged by it', 'manual, specifications; or the plate', 'rpm'),
  'idle.spreadMaxRpm': known('more is hunting', 'manual, governor', 'rpm'),
  'charging.setpointV': known('whether it charges', 'alternator plate or regulator', 'V'),
  'charging.toleranceV': known('whether it charges', 'manual, charging', 'V'),
  'charging.minStateOfCharge': known(
    'a weak battery ends in the middle of a crank',
    'common practice',
    'share',
  ),
  'thermostat.opensC': known('the end of the warm-up', 'stamped on the thermostat', 'degC'),
  'thermostat.fullyOpenC': known('hotter than this it is stuck', 'manual, cooling system', 'degC'),
  'thermostat.coolantMaxC': known(
    'above it the engine is stopped',
    'manual, cooling system: highest temperature',
    'degC',
  ),
  'thermostat.toleranceK': known('a gauge is not exact', MODEL, 'K'),
  'warmUp.minS': known('oil has to be everywhere', 'manual, starting; 3 to 5 minutes are usual', 's'),
  'warmUp.maxS': known('a thermostat that does not open by then is an open item', MODEL, 's'),
  'warmUp.readEveryS': known('the curve wants readings', MODEL, 's'),
  'warmUp.idleMaxS': known('new rings glaze at light idle: then fast idle', 'manual, running in', 's'),
  'warmUp.fastIdleRpm': known('it warms on at this speed', 'manual, running in', 'rpm'),
  sweeps: known(
    'pressure has to follow speed, gently',
    'between idle and four fifths of the rated speed; common practice',
    'rpm',
  ),
  'shutdown.settleS': known('the turbo cools', 'manual, stopping the engine', 's'),
  'shutdown.heatSoakLooksAfterS': known(
    'pressure rises when nothing carries heat away',
    'common practice',
    's',
  ),
  'shutdown.safeToOpenC': known('a hot cap scalds', 'manual, cooling system; 50 °C or less', 'degC'),
  'shutdown.soakRiseK': known('it must not boil then', MODEL, 'K'),
  'shutdown.boilMarginK': known('it must not boil then', MODEL, 'K'),
  'walkRound.clearValidS': known('people move: then it is asked again', 'common practice', 's'),
  faults: known('whether it blocks, may stay, or has to clear', 'manual, fault codes'),
  bus: known(
    'what need not be spoken; by itself it opens no gate',
    'wiring diagram; a socket with the marking J1939',
  ),
  retorque: known('it is gone through before the signature', 'manual, after the first run'),
  allowedSkips: known('none of them opens a gate', 'your shop'),
} as const satisfies Record<string, Field>;

/** The path of a value that has an origin of its own. */
export type ValueField = keyof typeof fields;

export const isValueField = (path: string): path is ValueField => Object.hasOwn(fields, path);

export const valueFields = Object.keys(fields).filter(isValueField);

/** What describes the profile itself, and the insides of values that are lists or more than one figure. */
export const parts = {
  $schema: field(
    'where the JSON Schema is',
    'an editor completes and checks by it',
    'docs/engine-profile.schema.json',
  ),
  schema: field('kind and version of this file', 'the program knows what it reads', 'as it stands here'),
  invented: field(
    'true for an engine that does not exist',
    'said on every face and in the record',
    'false for a real engine',
  ),
  name: field('name of the profile', 'people choose by it', 'your shop'),
  version: field('version of the profile', 'raised with every change', 'your shop; raised by the program'),
  'engine.strokes': field('two-stroke or four-stroke', 'how often it fires, for its sound', 'data plate'),
  'engine.unevenFiringDeg': field(
    'crank angle of each firing, where not evenly spread',
    'how often it fires, for its sound',
    'manual, firing order',
  ),
  'use.kind': field('vehicle, generator, marine or stationary', 'what is secured', 'you know'),
  'use.autoStart': field('where automatic start is locked out', 'it is named', 'panel of the set'),
  'use.breaker': field('where the breaker is', 'it is named', 'panel of the set'),
  'use.modeSwitch': field(
    'its switch of manual, off and automatic; null where it has none',
    'put to manual for the start, given back at the end',
    'panel of the set',
  ),
  'use.gearLever': field('the gear lever', 'it is named', 'helm'),
  'use.coupling': field('where the driven machine is uncoupled', 'it is named', 'on the machine'),
  'exhaust.kind': field('dry or wet', 'whether it can fill', 'on the engine'),
  'exhaust.rawWaterCock': field('the raw water cock', 'it is named', 'at the hull'),
  'jacketHeater.at': field('where it is switched or unplugged', 'it is named', 'on the block'),
  handsBack: field(
    'whether what was locked out is given back',
    'a step before the signature; false for a set that leaves the shop locked out',
    'your shop',
  ),
  'cutOff.at': field('what stops it', 'it is named before anything turns', 'on the engine'),
  'oil.grades[].grade': field('SAE grade', 'whether it suits the coldest night', 'label of the oil'),
  'oil.grades[].viscosity40Mm2S': field(
    'viscosity at 40 °C',
    'how long it takes to the gauge',
    'data sheet of the oil',
    'mm2/s',
  ),
  'oil.grades[].viscosity100Mm2S': field(
    'viscosity at 100 °C',
    'whether it is thick enough hot',
    'data sheet of the oil',
    'mm2/s',
  ),
  'oil.grades[].nightsFromC': field(
    'coldest night from which on it is allowed',
    'it is not filled before a colder one',
    'manual, oil: chart of grades by temperature',
    'degC',
  ),
  'oil.grades[].nightsToC': field(
    'coldest night up to which it is allowed',
    'it is not filled before a warmer one',
    'manual, oil: chart of grades by temperature',
    'degC',
  ),
  'fuel.filters[].id': field('first or second in the flow', 'it is named so', 'on the engine'),
  'fuel.filters[].fit': field('dry or pre-filled', 'how it is fitted', 'manual, fuel filter'),
  'fuel.primer': field('the hand primer', 'its strokes are counted', 'manual, bleeding the fuel system'),
  'prelube.port': field('where oil is pumped in', 'it is named', 'manual, oil system'),
  'firstRun.runS': field('length of the first run', 'how long it runs', 'manual, first start', 's'),
  'firstRun.drainS': field(
    'time until the dipstick tells the truth',
    'the oil runs back to the sump',
    'manual, oil level',
    's',
  ),
  'sensors[].id': field('short name, in camelCase', 'the record names it so', 'chosen'),
  'sensors[].name': field('name of the sensor', 'it is read out', 'wiring diagram'),
  'lamps[].id': field('short name, in camelCase', 'the record names it so', 'chosen'),
  'lamps[].name': field('name of the lamp', 'it is read out', 'panel'),
  'lamps[].keyOn': field('lit or dark with the key on', 'a dead lamp warns nobody', 'turn the key and look'),
  'lamps[].running': field('lit or dark while it runs', 'a lamp that stays lit is a fault', 'manual'),
  'heater.kind': field('grid heater or glow plugs', 'it is named', 'on the engine'),
  'heater.lampId': field('its lamp', 'the lamp that is waited for', 'one of the lamps'),
  'heater.waits': field('the wait by temperature, coldest first', 'how long to wait', 'manual, starting'),
  'heater.waits[].atC': field('intake temperature', 'the wait by temperature', 'manual, starting', 'degC'),
  'heater.waits[].waitS': field('the wait at it', 'how long to wait', 'manual, starting', 's'),
  'heater.toleranceS': field(
    'how much longer the lamp may burn',
    'longer than that is a fault',
    'common practice',
    's',
  ),
  'oilPressure.floor[].oilC': field('oil temperature of this row', 'hot oil has less', 'manual', 'degC'),
  'oilPressure.floor[].points': field('least pressure by speed, rising', 'the floor by speed', 'manual'),
  'oilPressure.floor[].points[].rpm': field('speed', 'the floor by speed', 'manual', 'rpm'),
  'oilPressure.floor[].points[].minKpa': field('least pressure at it', 'the floor', 'manual', 'kPa'),
  'idle.cold.minRpm': field('slowest idle, cold', 'slower is a fault', 'manual', 'rpm'),
  'idle.cold.maxRpm': field('fastest idle, cold', 'faster is a fault', 'manual', 'rpm'),
  'idle.warm.minRpm': field('slowest idle, warm', 'slower is a fault', 'manual', 'rpm'),
  'idle.warm.maxRpm': field('fastest idle, warm', 'faster is a fault', 'manual', 'rpm'),
  'sweeps[].rpm': field('speed of one sweep', 'pressure is read at it', 'see sweeps', 'rpm'),
  'faults[].spn': field('suspect parameter number', 'which part it is about', 'manual, fault codes'),
  'faults[].fmi': field('failure mode', 'what is wrong with it', 'manual, fault codes'),
  'faults[].judgement': field(
    'blocks, goOn or watch',
    'what the start does about it',
    'manual, fault codes; your shop',
  ),
  'faults[].watchS': field('how long a watched one may stay', 'then it blocks', 'manual, fault codes', 's'),
  'faults[].because': field('why', 'it is said and stands in the record', 'your words'),
  'bus.bitRate': field('bit rate', 'the bus cannot be read at another', 'wiring diagram', 'bit/s'),
  'bus.engineAddress': field(
    'address of the engine controller',
    'only its lamps and codes are acted on',
    '0 for the first engine (SAE J1939-81)',
  ),
  'bus.readings': field('what the bus gives', 'it need not be spoken', 'a log of the bus'),
  'bus.readings[]': field('a reading that the bus gives', 'it need not be spoken', 'a log of the bus'),
  'bus.spoken': field('of these, what is spoken all the same', 'the bus is held against it', 'chosen'),
  'bus.spoken[]': field('of these, one that is spoken all the same', 'the bus is held against it', 'chosen'),
  'bus.overspeedRpm': field('speed at which the bus stops it', 'stopped at once', 'as overspeedRpm', 'rpm'),
  'retorque[].id': field('short name, in camelCase', 'the record names it so', 'chosen'),
  'retorque[].name': field('what is torqued', 'it is read out', 'manual'),
} as const satisfies Record<string, Part>;

export const isPart = (path: string): path is keyof typeof parts => Object.hasOwn(parts, path);

const all: Readonly<Record<string, Field>> = { ...fields, ...parts };

/** What is known of a path, its list places written `[]`; undefined where nothing is. */
export const fieldAt = (path: string): Field | undefined =>
  Object.hasOwn(all, path) ? all[path] : undefined;
