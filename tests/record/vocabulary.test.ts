import { describe, expect, it } from 'vitest';
import { loadProfile } from '../../src/profile/load.ts';
import type { Entry } from '../../src/record/index.ts';
import {
  inJson,
  isKind,
  isNoteKind,
  type Kind,
  newerVocabulary,
  ofKind,
  readRecorded,
  understand,
  VOCABULARY,
  type Written,
} from '../../src/record/vocabulary/index.ts';

const profile = await loadProfile('demo-six');
const job = { vehicle: 'V', engine: 'E', technician: 'T', second: 'S', supervisor: 'U' };
const stamp = { atMs: 1200, by: 'technician', via: 'voice' } as const;
const judged = { met: true, min: 1, max: 3, margin: 1, rule: 'r', source: 's', why: 'w' };

/** One of each kind that a record may hold, with all of its members. */
const written: { readonly [K in Kind]: Written<K> } = {
  opened: { profile, job, language: 'en', units: 'us', vocabulary: 2 },
  resumed: { vocabulary: 2 },
  recovered: { vocabulary: 2, tornBase64: 'eyJh' },
  event: { type: 'reply', id: 'cardRight', ...stamp, bus: { si: 1 }, state: 'job.card.asking' },
  passed: {
    step: 'job.card',
    by: 'second',
    gate: 'coolantReady',
    misheard: 1,
    figures: { water: { value: 2, unit: 'litre' } },
  },
  verdict: {
    step: 'job.card',
    quantity: 'oilPressure',
    value: 2,
    unit: 'kPa',
    series: [1, 2],
    via: 'keys',
    bus: 2.5,
    ...judged,
  },
  inTime: { step: 'job.card', seconds: 2, unit: 's', ...judged },
  stopped: { step: 'job.card', cause: 'overheating', by: 'second' },
  reopened: { cause: 'overheating', steps: ['job.card'] },
  found: { step: 'job.card', point: 'fuelLines', finding: 'weep', does: 'lookAgain', afterS: 12 },
  leftOpen: {
    step: 'job.card',
    quantity: 'chargingVoltage',
    value: 13.2,
    unit: 'V',
    finding: 'valveNoise',
    by: 'technician',
  },
  settled: { step: 'job.card' },
  skipped: { step: 'job.card', reason: 'none there', by: 'technician' },
  faults: {
    step: 'job.card',
    faults: [{ spn: 157, fmi: 18, meaning: 'low', decision: 'watch', accepted: 'by S' }],
  },
  refused: { step: 'job.card', unmet: ['coolantReady'] },
  disagreement: {
    step: 'job.card',
    quantity: 'engineSpeed',
    lamp: 'stop',
    spoken: 800,
    bus: [{ spn: 1, fmi: 2 }],
    unit: 'rpm',
    allowed: 60,
    rule: 'r',
  },
  doubted: {
    step: 'job.card',
    quantity: 'coolantTemperature',
    value: 2,
    unit: '°C',
    reply: 'thermostatOpen',
    via: 'keys',
    ...judged,
  },
  vouched: {
    step: 'job.card',
    quantity: 'coolantTemperature',
    value: 2,
    before: 1,
    unit: '°C',
    reply: 'thermostatOpen',
    by: 'second',
  },
  barred: { step: 'job.card', why: 'oilRisen' },
  contradiction: { step: 'job.card', quantity: 'engineSpeed', before: 1, now: 2 },
  takenBack: { step: 'job.card', quantity: 'engineSpeed', value: 1 },
  heard: { text: 'yes', kind: 'reply', via: 'voice', by: 'second', confidence: 0.9, reason: 'far' },
  said: { text: 'Ready?', line: 'ask', step: 'job.card', priority: 'prompt' },
  problem: { sentence: 'No microphone.' },
  hearing: { finding: 'bayChecked', noiseDbfs: -50, aboveNoiseDb: 20 },
  reading: { quantity: 'engineSpeed', si: 800, via: 'bus' },
  engineHeard: { rpm: 712.5, certainty: 0.97, happened: 'fired' },
  besideOthers: {
    step: 'checks.idle',
    figure: 'idle-speed',
    value: 900,
    unit: 'rpm',
    others: 40,
    below: 38,
    above: 2,
    median: 750,
    min: 700,
    max: 800,
    within: false,
  },
  otherVoice: { step: 'job.card', certainty: 0.99 },
  voiceLearned: { by: 'second', utterances: 4, kept: false },
  command: { id: 'i', device: 'd', name: 'n', role: 'second', do: 'stop' },
  notCarriedOut: {
    id: 'i',
    device: 'd',
    name: 'n',
    role: 'supervisor',
    do: 'stop',
    cause: 'smokeOrFire',
    why: 'notAtEngine',
  },
  closed: { outcome: 'signedOff' },
};
const all = Object.entries(written) as [Kind, Readonly<Record<string, unknown>>][];

/** What may be left out, or be null. The rest has to be there. */
const mayBeLeftOut: Partial<Record<Kind, readonly string[]>> = {
  opened: ['vocabulary'],
  resumed: ['vocabulary'],
  recovered: ['vocabulary', 'tornBase64'],
  event: ['bus'],
  otherVoice: ['certainty'],
  engineHeard: [
    'rpm',
    'certainty',
    'happened',
    'amplitudeRpm',
    'periodS',
    'fromHz',
    'toHz',
    'db',
    'microphone',
  ],
  passed: ['by', 'gate', 'misheard', 'figures'],
  verdict: [
    'quantity',
    'value',
    'unit',
    'series',
    'via',
    'bus',
    'min',
    'max',
    'margin',
    'rule',
    'source',
    'why',
  ],
  inTime: ['seconds', 'min', 'max', 'margin', 'rule', 'source', 'why'],
  stopped: ['cause', 'by'],
  reopened: ['cause'],
  found: ['afterS'],
  leftOpen: ['quantity', 'value', 'unit', 'finding'],
  disagreement: ['quantity', 'lamp', 'spoken', 'bus', 'unit', 'allowed', 'rule'],
  doubted: ['quantity', 'value', 'unit', 'reply', 'via', 'min', 'max', 'margin', 'rule', 'source', 'why'],
  vouched: ['quantity', 'value', 'before', 'unit', 'reply'],
  takenBack: ['quantity', 'value'],
  contradiction: ['quantity', 'before', 'now'],
  heard: ['confidence', 'reason'],
  hearing: ['noiseDbfs', 'aboveNoiseDb'],
};

/** Of another type than any member has. */
const NONSENSE = Symbol.iterator;

describe('an entry of the record', () => {
  it.each(all)('%s is read with every member that was written', (kind, data) => {
    expect(understand(kind, data)).toEqual({ kind, data });
  });

  it.each(all)('%s is not understood without what it needs, and is without the rest', (kind, data) => {
    for (const name of Object.keys(data)) {
      const { [name]: _, ...rest } = data;
      const isUnderstood = understand(kind, rest) !== undefined;
      expect([name, isUnderstood]).toEqual([name, mayBeLeftOut[kind]?.includes(name) ?? false]);
    }
  });

  it.each(all)('%s is not understood where a member is something else', (kind, data) => {
    for (const name of Object.keys(data).filter(each => each !== 'figures'))
      expect([name, understand(kind, { ...data, [name]: NONSENSE })]).toEqual([name, undefined]);
  });

  it('of a kind that nobody knows is not understood, not even one that every object has', () => {
    for (const kind of ['danced', 'toString', '__proto__', '']) {
      expect(isKind(kind)).toBe(false);
      expect(understand(kind, {})).toBeUndefined();
    }
  });

  it('is a conclusion of the procedure, or is not', () => {
    const notes = all.map(([kind]) => kind).filter(isNoteKind);
    expect(notes).toEqual([
      'passed',
      'verdict',
      'inTime',
      'stopped',
      'reopened',
      'found',
      'leftOpen',
      'settled',
      'skipped',
      'faults',
      'refused',
      'disagreement',
      'doubted',
      'vouched',
      'barred',
      'contradiction',
      'takenBack',
      'otherVoice',
    ]);
    expect(isNoteKind('toString')).toBe(false);
  });

  it('holds no number that no gauge comes near', () => {
    for (const si of [1e12, -1e12]) expect(understand('reading', { ...written.reading, si })).toBeDefined();
    for (const si of [1.1e12, -1.1e12])
      expect(understand('reading', { ...written.reading, si })).toBeUndefined();
  });
});

describe('an event', () => {
  const plain = [
    'hold',
    'continue',
    'sayAgain',
    'goBack',
    'takeBack',
    'skip',
    'status',
    'timeLeft',
    'help',
    'unclear',
    'clock',
  ];
  const events: readonly Readonly<Record<string, unknown>>[] = [
    ...plain.map(type => ({ type })),
    { type: 'stop' },
    { type: 'stop', cause: 'toolRestarted' },
    { type: 'reply', id: 'cardRight' },
    { type: 'reply', id: 'cardRight', certainty: 0.9 },
    {
      type: 'reply',
      id: 'cardRight',
      bus: { si: 1, speedRpm: 2, lamps: { stop: 'lit', warn: 'dark' }, codes: [{ spn: 1, fmi: 2 }] },
    },
    { type: 'reply', id: 'allOff', bus: { oilPressureKpa: 300, chargingV: 28.4 } },
    { type: 'value', quantity: 'engineSpeed', si: 800 },
    { type: 'value', quantity: 'engineSpeed', si: 800, bus: { si: 810 } },
    { type: 'codes', codes: [{ spn: 157, fmi: 18 }] },
    { type: 'reason', text: 'no such part' },
  ];

  it.each(events)('%j is read as it was written', event => {
    const data = { ...event, ...stamp, state: 's' };
    expect(understand('event', data)).toEqual({ kind: 'event', data });
  });

  it.each([
    { type: 'dance' },
    { type: 'reply', id: 'toString' },
    { type: 'reply' },
    { type: 'reply', id: 'cardRight', certainty: 1.1 },
    { type: 'stop', cause: 'a whim' },
    { type: 'value', quantity: 'mood', si: 1 },
    { type: 'value', quantity: 'engineSpeed' },
    { type: 'reply', id: 'cardRight', bus: { lamps: { stop: 'blinks' } } },
    { type: 'reply', id: 'cardRight', bus: { codes: [{ spn: 1 }] } },
    { type: 'codes', codes: [{ fmi: 1 }] },
    { type: 'codes' },
    { type: 'reason' },
  ])('%j is none', event => {
    expect(understand('event', { ...event, ...stamp, state: 's' })).toBeUndefined();
  });

  it.each([{ atMs: -1 }, { by: 'nobody' }, { via: 'letter' }])('from %j is none', change => {
    for (const event of events)
      expect(understand('event', { ...event, ...stamp, ...change, state: 's' })).toBeUndefined();
  });
});

const entry = (seq: number, kind: string, data: object, monoMs = 100 * seq): Entry =>
  ({ v: 1, seq, at: '2026-01-02T03:04:05.000Z', monoMs, kind, data, prev: '', hash: '' }) as unknown as Entry;

describe('the entries of a session', () => {
  it('are read behind the first, with the time of the session, which never runs backwards', () => {
    const { entries, notUnderstood } = readRecorded([
      entry(0, 'opened', {}),
      entry(1, 'problem', { sentence: 'a' }),
      entry(2, 'resumed', {}, 3),
      entry(3, 'problem', { sentence: 'b' }, 250),
    ]);
    expect(entries).toEqual([
      { seq: 1, at: expect.any(String), timeMs: 100, kind: 'problem', data: { sentence: 'a' } },
      { seq: 2, at: expect.any(String), timeMs: 100, kind: 'resumed', data: { vocabulary: 1 } },
      { seq: 3, at: expect.any(String), timeMs: 250, kind: 'problem', data: { sentence: 'b' } },
    ]);
    expect(notUnderstood).toEqual([]);
    expect(entries.filter(ofKind('problem')).map(({ seq }) => seq)).toEqual([1, 3]);
  });

  it('that are not understood are counted, and so are those of an impossible time', () => {
    const { entries, notUnderstood } = readRecorded([
      entry(1, 'danced', {}),
      entry(2, 'problem', {}),
      entry(3, 'problem', { sentence: 'in time' }, 1e12),
      entry(4, 'problem', { sentence: 'after thirty years' }, 1.1e12),
    ]);
    expect(entries.map(({ seq }) => seq)).toEqual([3]);
    expect(notUnderstood).toEqual([1, 2, 4]);
  });
});

describe('the vocabulary of a record', () => {
  it('is newer where any run of a program said so, in an entry of the record’s own', () => {
    const newer = VOCABULARY + 1;
    for (const kind of ['opened', 'resumed', 'recovered']) {
      expect(newerVocabulary([entry(0, kind, { vocabulary: newer })])).toBe(newer);
      expect(newerVocabulary([entry(0, kind, { vocabulary: VOCABULARY })])).toBeNull();
      expect(newerVocabulary([entry(0, kind, { vocabulary: 'x' })])).toBeNull();
    }
    expect(newerVocabulary([entry(0, 'problem', { vocabulary: newer })])).toBeNull();
    expect(newerVocabulary([])).toBeNull();
    expect(
      newerVocabulary([
        entry(0, 'opened', { vocabulary: VOCABULARY + 2 }),
        entry(1, 'resumed', { vocabulary: 7 }),
      ]),
    ).toBe(VOCABULARY + 2);
  });
});

describe('what is written', () => {
  it('is cut where it is longer than anybody says, and holds whole characters only', () => {
    expect(inJson<'problem'>({ sentence: 'x'.repeat(4001) }).sentence).toBe('x'.repeat(4000));
    expect(inJson<'problem'>({ sentence: 'x'.repeat(4000) }).sentence).toHaveLength(4000);
    expect(inJson<'problem'>({ sentence: `${'x'.repeat(3999)}🔧` }).sentence).toBe(
      `${'x'.repeat(3999)}\uFFFD`,
    );
    expect(inJson<'problem'>({ sentence: 'a 🔧 \uD83D b' }).sentence).toBe('a 🔧 \uFFFD b');
  });

  it('is what will be read: what JSON does not hold is left out', () => {
    const data = inJson<'hearing'>({ finding: 'f', noiseDbfs: undefined, aboveNoiseDb: 3 });
    expect(data).toStrictEqual({ finding: 'f', aboveNoiseDb: 3 });
  });
});
