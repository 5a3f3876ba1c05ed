import { englishFindings, type FindingSentences } from '../../record/index.ts';
import type { HoldStory } from '../model.ts';

/** Words for one, and for any other count; which of them is meant, the grammar of the language decides. */
export interface Counted {
  readonly one: string;
  readonly many: string;
}

type Table = Readonly<Record<string, string>>;

const holdKinds: Readonly<Record<HoldStory['kind'], string>> = {
  hold: 'hold, at least',
  rest: 'starter rests, at least',
  burst: 'starter turns, at most',
  watch: 'watched, at most',
};

const findings: FindingSentences = englishFindings;
const via: Table = {
  voice: 'by voice',
  keys: 'by key',
  touch: 'by touch',
  bus: 'from the vehicle bus',
  tool: 'by the tool',
};
const unclear: Table = {
  nothingRecognized: 'speech, but no words',
  outOfGrammar: 'not a reply to this question',
  lowConfidence: 'too uncertain',
  outOfRange: 'out of range',
  tooLong: 'too long',
  farAway: 'too far from the microphone',
  deniedAtReadBack: 'denied at read-back',
  contradicted: 'another number than the one read back',
  notExpected: 'not expected',
  notYetAsked: 'before it was asked',
};
const decisions: Table = { blocks: 'blocks', mayGoOn: 'may go on', watch: 'watched until it clears' };
const whyNotCarriedOut: Table = {
  notAtEngine: 'whoever called is not at the engine',
  toolSpoke: 'the tool was saying that word itself',
};

/** Why a value was not accepted where no limit says so; anything else is told as the record has it. */
const why: Table = {
  idleHunting: 'the idle hunts',
  idleFalling: 'the idle falls',
  idleRising: 'the idle rises',
  notCoolYet: 'still hot',
  coolOnce: 'cool at one look only',
  pressureDoesNotFollow: 'it does not follow the speed',
  boilsAfterKeyOff: 'it may boil once the key is off',
  hotAfterRun: 'too hot for a thermostat that works',
};
/** Whose key signed, as a genitive. */
const keyOwners: Table = { bay: 'of the bay', supervisor: 'of the supervisor' };
const triggers: Table = {
  clock: 'time was up',
  reply: 'by a reply',
  value: 'by a value',
  reading: 'by a reading outside its limits',
  unclear: 'no clear answer in time',
};
/** Sources of rules in other words, by the words of the record; what stands nowhere here is told in those. */
const sources: Table = {};

/** Each rule in a sentence, by its id; one that stands nowhere here is told by its id. */
const ruleSentences: Table = {
  'plausible-range': 'The value only has to be possible: it is calculated with.',
  'ashrae-ethylene-glycol':
    'The mix has to stand the coldest night with its margin, and to be no stronger than the maker allows.',
  'ashrae-propylene-glycol':
    'The mix has to stand the coldest night with its margin, and to be no stronger than the maker allows.',
  'oil-capacity': 'As much oil goes in as the engine holds.',
  'biodiesel-share': 'There is no more biodiesel in the fuel than the engine takes.',
  'cranking-voltage-floor':
    'While the starter turns, the battery does not fall below the volts for its temperature.',
  'lead-acid-rest-voltage':
    'At rest, the battery shows the volts of the charge that is asked for, and no more than a lead battery can.',
  'charging-window': 'The alternator holds the battery at its charging voltage for this temperature.',
  'idle-trend': 'The idle lies in its range, neither hunts nor drifts.',
  'idle-range': 'The idle lies in its range.',
  'idle-governed': 'An engine that idles far too fast is not governed, and is stopped.',
  'oil-pressure-floor': 'The oil pressure is not below the least for this speed and this oil temperature.',
  'relief-valve-holds':
    'Where the relief valve holds the pressure, what is below it rises as far as it goes.',
  'oil-pressure-follows-speed': 'The oil pressure rises with the speed.',
  'coolant-boiling': 'The coolant is not hotter than the engine allows, and not near boiling here.',
  'thermostat-opens': 'The coolant has come to where the thermostat opens.',
  'heat-soak-boil-margin':
    'After key-off, the heat left in the metal does not bring the coolant to the boil under its cap.',
  'cap-cool-enough': 'A cap is opened only when the coolant has cooled down.',
  'thermostat-regulates':
    'Warm and without load, the coolant is no hotter than a thermostat that works lets it be.',
  'idle-swing': 'The idle, followed for half a minute, does not swing further than it may.',
};

/** The frame of a report in English; blanks are in braces. What the session said comes from its language. */
export const en = {
  locale: 'en-GB',
  firstOfMonth: '1',
  dateTime: '{date}, {time} UTC',
  /** Between a figure and its unit. */
  unitGap: ' ',
  quoted: '\u201c{text}\u201d',

  findings,
  via,
  unclear,
  decisions,
  why,
  whyNotCarriedOut,
  keyOwners,
  triggers,
  sources,
  ruleSentences,
  holdKinds,
  engineSpeed: 'engine speed',

  between: '{min} to {max}',
  atLeast: 'at least {value}',
  atMost: 'at most {value}',
  margins: {
    toSpare: '{amount} to spare',
    tooLow: '{amount} too low',
    tooHigh: '{amount} too high',
    beyond: '{amount} outside',
    onLimit: 'on the limit',
    hardly: 'hardly anything',
  },
  /** How something was said, and on which paired device. */
  onDevice: '{means} on {device}',

  title: 'First start: report',
  fileTitle: 'First start: {vehicle}',
  unknownVehicle: 'unknown vehicle',
  recordFoot: 'Record {hash}',
  page: 'Page {page} of {of}',
  lettersLacking:
    'Some letters above are drawn as boxes: the font of this PDF lacks them. The HTML report shows them.',
  invented: 'The engine of this report is invented, for practice.',
  rehearsal: 'A rehearsal: a model stood in for the engine.',

  trust: {
    altered: 'NOT VERIFIED: this record is not as it was written. {fault}',
    noEntry: 'It holds no whole entry.',
    onlyBefore: {
      one: 'The report shows only the {n} entry before the fault. It is no proof of anything after it.',
      many: 'The report shows only the {n} entries before the fault. It is no proof of anything after it.',
    },
    notVerified: 'NOT VERIFIED: {sentence}',
    notConfirmed: 'NOT CONFIRMED: {fault}',
    verified: {
      one: 'Verified: the one entry is chained as written.',
      many: 'Verified: all {n} entries are chained as written.',
    },
    verifiedAndSigned: {
      one: 'Verified: the one entry is chained as written, and signed with the key {owners}.',
      many: 'Verified: all {n} entries are chained as written, and signed with the key {owners}.',
    },
    and: ' and ',
    signatureFails: 'The signature {owner} (key {keyId}) does not hold: {why}.',
  },

  replay: {
    noHeader:
      'The record does not begin like a session of this version, so that nothing in it could be carried out once more.',
    impossible: 'The procedure cannot be replayed from this record: {why}',
    differs:
      'Carried out once more, the recorded events do not lead to line {line}: {what}. Either another version of the procedure wrote this record, or it was altered and chained anew.',
    passedUnmet:
      "In line {line} the gate '{gate}' is passed at {step}, though by its own judgement before it the limit was not met.",
    nothingFollows: "no '{recorded}' follows from them",
    otherState: 'they lead to {leads}, not {recorded}',
    otherNote: "they lead to '{leads}', not '{recorded}'",
    otherMember: 'its {member} is another',
    otherOutcome: "they lead to {leads}, not to '{recorded}'",
    noteLacking: "'{leads}' should stand before it",
    olderVersion:
      'An earlier version of this program wrote the record (vocabulary {version}), by another procedure: it is told as it stands, not carried out once more.',
    newerVersion: 'A newer version of this program wrote the record (vocabulary {version}); report it there.',
  },

  outcome: {
    unconfirmed: 'As the record says, not confirmed: {text}',
    nothing: 'Nothing happened: the record holds no step of a start-up.',
    signedOff: 'Signed off after {time}: {facts}.',
    allGatesMet: { one: 'all {n} gate met', many: 'all {n} gates met' },
    gatesNotMet: { one: '{n} gate NOT met', many: '{n} gates NOT met' },
    onlyDrills: 'no stop but the drills',
    stops: { one: '{n} stop', many: '{n} stops' },
    nothingOpen: 'nothing left open',
    openItems: { one: '{n} open item', many: '{n} open items' },
    ended: 'Ended without sign-off after {time}, {place}{cause}. {ran}',
    stopped: 'Stopped and not gone on with after {time}, {place}{cause}. {ran}',
    brokenOff: 'Not finished: the record breaks off after {time}, {place}. {ran}',
    beforeFirstStep: 'before its first step',
    inPhase: 'in phase {n} of {of}, {phase}',
    cause: ': {cause}',
    noCause: 'no cause was given',
    ranUnknown: 'Whether the engine ran cannot be told.',
    turnedUnexpectedly: 'Engine speed was read, but in no step in which the engine runs.',
    didNotRun: 'The engine did not run.',
    ranFor: 'The engine ran for {time}.',
  },

  glance: {
    ran: 'Engine ran',
    ranUnknown: 'cannot be told',
    ranFrom: '{time}, from {from}',
    ranNowhere: 'in no step',
    gates: 'Gates met',
    gatesOf: '{met} of {all}',
    stops: 'Stops',
    stopsAndDrills: { one: '{stops} (and {n} drill)', many: '{stops} (and {n} drills)' },
    faults: 'Fault codes',
    skips: 'Skipped steps',
    misheard: 'Not understood at first',
    openItems: 'Open items',
    signature: 'Signature',
    signatureProved: 'proved',
    signatureUnproved: 'not proved',
  },

  job: {
    unknown:
      'The record does not begin like a session of this version: vehicle, people and engine profile cannot be told.',
    vehicle: 'Vehicle',
    engine: 'Engine',
    profile: 'Profile',
    inventedProfile: '{name} (invented, for practice)',
    began: 'Began',
    lasted: 'Lasted',
    lastedTime: '{time} ({clock})',
    details: {
      serial: 'Serial number or VIN',
      hours: 'Hours',
      oilUsed: 'Oil used',
      coolantUsed: 'Coolant used',
      filterParts: 'Filter part numbers',
    },
  },

  origins: {
    title: 'Where the engine’s values come from',
    count: '{n} {from}',
    from: {
      plate: 'from the plate',
      manual: 'from the manual',
      measured: 'measured',
      seen: 'seen on the engine',
      computed: 'computed',
      assumed: 'assumed',
    },
    none: 'Nothing was assumed.',
    assumed: 'assumed: {name}',
    accepted: 'assumed: {name}, accepted by {by}',
  },

  timeLine: {
    title: 'Time line',
    note: 'Session time. Engine: amber while the starter turned it, green while it ran.',
    alt: '{reached} of {all} phases in {time}.',
    notReached: 'not reached',
    engine: 'Engine cranked and ran',
    stops: 'Stops (hollow: drills)',
    held: 'On hold',
    restarted: 'Tool restarted',
  },

  open: {
    title: 'Open items',
    gate: 'Gate not met: {gate}',
    gates: '{n} gates not met: {gates}',
    skip: 'Skipped: {step} ({reason})',
    fault: 'Code accepted by the supervisor: SPN {spn} FMI {fmi} ({reason})',
    reopened: 'To be done again: {step}',
    left: 'Left open: {step}',
    leftWith: 'Left open: {step} ({what})',
    barred: 'Not to be started: {why}',
    none: 'Nothing is left open.',
    noneConfirmed: 'The record names none; that could not be confirmed.',
    retorque: 'Retorque list',
    retorqueNote: {
      one: '{done} of {n} item confirmed, cold.',
      many: '{done} of {n} items confirmed, cold.',
    },
    torqued: '{name}: torqued',
    notTorqued: '{name}: OPEN',
  },

  gates: {
    title: 'Gates and readings',
    note: 'Times are session time. Numbers in brackets name the rule, listed below.',
    none: 'No gate was reached.',
    reading: 'Reading',
    at: 'At',
    value: 'Value',
    limit: 'Limit',
    margin: 'Margin',
    rule: 'Rule',
    holdUp: 'Readings that hold the work up',
    holdUpNote: 'They open no gate; work went on only when they were within their limits, or stopped.',
    figures: 'Figures for the calculations',
    figuresNote: 'Weather, place and amounts: limits are worked out from them.',
    proved: 'Proved: {list}.',
    provedBy: '{person} {means} at {time}',
    held: 'held against the limit: {value}',
    met: 'met at {time}, {person}',
    notMet: 'NOT MET',
    confirmed: 'Confirmed: {steps}.',
    missing: 'Missing: {steps}.',
    severalAlike: '{n} readings, all {value}',
    several: '{n} readings, {lowest} to {highest}',
    moreOutside: {
      one: '{n} more reading outside; all are in the JSON and CSV exports',
      many: '{n} more readings outside; all are in the JSON and CSV exports',
    },
    notAccepted: '{quantity} NOT accepted',
    notAcceptedWhy: '{quantity} NOT accepted: {why}',
  },

  plots: {
    title: 'Readings against time and limits',
    none: 'No reading was taken.',
    note: 'Dashed: limits; shaded red: outside them. Bands behind: phases, by their number in the time line.',
    once: 'Read once: the grey bar is what the limits allow',
    valueAt: '{value} at {time}',
    labelled: '{label}: {text}',
    quantityIn: '{quantity}, {unit}',
    alt: { one: '{quantity}: {n} reading', many: '{quantity}: {n} readings' },
    altAllInside: '{readings}, none outside the limits.',
    altOutside: '{readings}, {bad} outside the limits.',
    pressure: 'Oil pressure over engine speed, {unit} over {speedUnit}',
    pressureAlt: {
      one: 'Oil pressure at {n} speed, with the least pressure allowed at each.',
      many: 'Oil pressure at {n} speeds, with the least pressure allowed at each.',
    },
  },

  stops: {
    title: 'Stops and their causes',
    none: 'Nobody called stop.',
    step: 'In step',
    called: 'Called',
    cause: 'Time and cause',
    after: 'After it',
    onlyDrills: 'Nobody called stop but for practice.',
    head: '{time}: {cause}',
    inStep: 'In step: {step}. Called: {called}.',
    byReading: '{quantity} {value}, limit {limit}',
    renamed:
      'The session found {found}; people named {cause} afterwards: what {found} puts in doubt was done again all the same.',
    drills: { one: '{n} drill of the emergency words', many: '{n} drills of the emergency words' },
    byBus: 'the session itself, from the vehicle bus',
    by: '{person}, {via}',
    noCause: 'not given',
    drillHeard: 'heard; went on at {time}',
    wentOn: 'went on at {time}',
    notGoneOn: 'not gone on with',
    again: 'To be done again: {steps}.',
  },

  doubts: {
    title: 'Questioned as hardly possible',
    note: 'What could not be true by what was known was not taken on one person\u2019s word.',
    said: 'Said or shown',
    expected: 'What it could be',
    became: 'What became of it',
    value: '{what}, {value}',
    notTaken: 'not taken',
    vouched: 'taken: read by the {person} too',
  },

  besideOthers: {
    title: 'Beside this shop\u2019s earlier starts of this engine',
    note: 'Told, and nothing hangs on it: no step is opened or shut by it.',
    value: 'This start',
    usual: 'Usual here',
    place: 'Among them',
    middle: 'below {above}, above {below} of {all}',
    unlike: 'unlike them: below {above}, above {below} of {all}',
  },

  faults: {
    title: 'Fault codes',
    none: 'No fault code was read.',
    code: 'Code',
    what: 'What it is',
    story: 'Story',
    judged: '{time} {step}: {decision}',
    accepted: '{time} accepted by the supervisor: {reason}',
    cleared: '{time} said to have cleared',
    endUnknown: 'whether it was there at the end cannot be told',
    atEnd: 'not read as gone by the end',
    gone: 'not among the codes of the last round',
  },

  skips: {
    title: 'Skipped steps',
    none: 'No step was skipped.',
    reason: 'Reason',
    by: 'By',
  },

  misheard: {
    title: 'Misheard and repaired',
    none: 'Everything was understood the first time.',
    heard: 'Heard',
    why: 'Why it did not count',
    repairedBy: 'What counted then',
    nothingHeard: '(nothing)',
    folded: { one: '{n} time, {repaired}.', many: '{n} times, {repaired}.' },
    allRepaired: 'each put right in the same step',
    notRepaired: {
      one: '{n} of them with nothing that counted after it',
      many: '{n} of them with nothing that counted after them',
    },
    repaired: '{text} at {time}',
    nothing: 'nothing',
  },

  ear: {
    title: 'The engine by ear',
    note: 'What the microphone heard of the engine. Nothing is judged by it, and where it is silent that says nothing about the engine.',
    speed: 'Engine speed by ear, {unit}; each change, and twice a minute what stays',
    alt: { one: '{n} speed by ear.', many: '{n} speeds by ear.' },
    happened: 'Heard',
    at: 'Speed',
    microphone: 'By the device',
    what: {
      cranking: 'Cranked',
      fired: 'Fired',
      running: 'Running',
      stalled: 'Stalled',
      lost: 'Not heard any more',
      hunting: 'Hunts by {swing} to either side, every {period} s',
      overspeed: 'Too fast: called out',
      changed: 'Sounds otherwise than in its first minute: {db} dB between {from} and {to} Hz',
    },
  },

  voices: {
    title: 'Who spoke',
    note: 'A voice is held against what its owner said earlier in this session. It can refuse an answer and never grants one. Nothing of a voice was kept.',
    person: 'Asked',
    answers: 'Spoken answers',
    own: 'In their voice',
    others: "In another's",
    unsure: 'Not sure',
    refused: {
      one: '{n} answer was refused: it was asked of the second person and came in the voice of the technician.',
      many: '{n} answers were refused: they were asked of the second person and came in the voice of the technician.',
    },
    folded: {
      one: '{n} spoken answer, by whom and in whose voice.',
      many: '{n} spoken answers, by whom and in whose voice.',
    },
    said: 'Said',
    askedOf: 'Asked of',
    voice: 'Voice',
    notSure: 'not sure',
    neither: 'of neither',
    notTaken: '{voice}: not taken',
  },

  holds: {
    title: 'Holds and cranking, planned and kept',
    unknown: 'Cannot be told: the record does not replay.',
    none: 'Nothing was timed.',
    what: 'What',
    planned: 'Planned',
    took: 'Took',
    paused: 'Paused',
    onHold: '{time} on hold',
    brokenOff: 'broken off',
    overLimit: 'over its limit',
  },

  computed: {
    title: 'Figures calculated for this engine and this weather',
    shown: 'As it was shown',
  },

  cautions: {
    title: 'Cautions given',
    none: 'No caution was given.',
    note: 'Bold: call-outs that went before everything else.',
    said: 'Said',
    times: 'Times',
  },

  tool: {
    title: 'Notes on the tool and the record',
    what: 'What',
    refused: '{step} refused; not met: {gates}.',
    notCarriedOut: 'Call for help from {device} ({person}), {cause}: not carried out; {why}.',
    notUnderstood: {
      one: '{n} entry of the record could not be understood and is not shown; the first is number {first}.',
      many: '{n} entries of the record could not be understood and are not shown; the first is number {first}.',
    },
  },

  tables: {
    at: 'At',
    step: 'Step',
    between: '; ',
    more: 'And {n} more; all are in the JSON export.',
  },

  rules: { title: 'Rules behind the limits', rule: '[{n}] {sentence} Source: {source}.' },

  foot: {
    title: 'Signatures',
    signedOnDevice: 'Signed by {name} on the supervisor\u2019s own device, {device}, at {time}.',
    signedByKey: 'Signed by {name} at {time}, and with the supervisor\u2019s own key.',
    signedUnproved:
      '\u201cI sign\u201d was said for {name} at {time}. NOT PROVED: it came neither from the supervisor\u2019s own device nor with their key. Sign by hand above, or with: npm start -- sign RECORD --role supervisor --key FILE',
    valid: 'Digital signature (Ed25519) {owner}, key {keyId}, {at}: valid.',
    lastHash:
      'SHA-256 of the last entry. To find any later change, also lines cut off the end, run: npm start -- verify RECORD --hash followed by',
    lastSoundHash: 'SHA-256 of the last sound entry; what follows it in the file is NOT VERIFIED',
  },
};

/** What a language has to bring for its reports: what is missing does not compile. */
export type ReportWords = Readonly<typeof en>;
