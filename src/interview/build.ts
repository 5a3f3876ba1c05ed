import type { ValueField } from '../profile/fields.ts';
import { valueFields } from '../profile/fields.ts';
import type { Origin } from '../profile/provenance.ts';
import { type Profile, profileSchema } from '../profile/schema.ts';
import { STATED_AT_C, waitsFor } from './heater-waits.ts';
import { type Answers, draftOf, fillIn, originOfField } from './interview.ts';
import { idOf, lampOf, WAIT_LAMP } from './names.ts';
import { type Draft, numberIn, type QuestionId, rangeIn, textIn } from './question.ts';
import { questions } from './questions/index.ts';
import { sweepSpeeds } from './speeds.ts';

/** A profile as far as the answers go, not yet looked at by the schema. */
type Json = Record<string, unknown>;

function put(into: Json, path: string, value: unknown): void {
  const keys = path.split('.');
  const last = keys.pop();
  if (last === undefined) return;
  let at = into;
  for (const key of keys) {
    const inner = at[key];
    const next: Json = typeof inner === 'object' && inner !== null ? (inner as Json) : {};
    at[key] = next;
    at = next;
  }
  at[last] = value;
}

const names = (draft: Draft, id: QuestionId): string[] => {
  const value = draft[id];
  return Array.isArray(value) ? value.filter(each => typeof each === 'string') : [];
};

/** Hot oil: no row of the floor may end below what coolant can reach. */
const HOT_OIL_C = 130;
/** The floor has to know slow speeds too, while the engine comes up; below idle it falls with the speed. */
const SLOWEST_RPM = 300;

function floorOf(draft: Draft) {
  const rated = numberIn(draft, 'ratedRpm') ?? 0;
  const overspeed = numberIn(draft, 'overspeedRpm') ?? rated;
  const atRated = numberIn(draft, 'floorRatedKpa') ?? 0;
  // What runs at one speed has one floor, and falls with the speed below it.
  const slow = rangeIn(draft, 'idle.warm')?.[0] ?? rated;
  const atSlow = numberIn(draft, 'floorIdleKpa') ?? atRated;
  return [
    {
      oilC: Math.max(HOT_OIL_C, numberIn(draft, 'thermostat.coolantMaxC') ?? 0),
      points: [
        { rpm: SLOWEST_RPM, minKpa: Math.floor((atSlow * SLOWEST_RPM) / slow) },
        ...(slow < rated ? [{ rpm: slow, minKpa: atSlow }] : []),
        { rpm: rated, minKpa: atRated },
        { rpm: Math.max(overspeed, rated + 1), minKpa: atRated },
      ],
    },
  ];
}

function securedOf(draft: Draft) {
  const kind = textIn(draft, 'use');
  switch (kind) {
    case 'generator':
      return { kind, autoStart: textIn(draft, 'autoStart'), breaker: textIn(draft, 'breaker') };
    case 'marine':
      return { kind, gearLever: textIn(draft, 'gearLever') };
    case 'stationary':
      return { kind, coupling: textIn(draft, 'coupling') };
    default:
      return { kind };
  }
}

const exhaustOf = (draft: Draft) =>
  textIn(draft, 'exhaust') === 'wet'
    ? { kind: 'wet', rawWaterCock: textIn(draft, 'rawWaterCock') }
    : { kind: 'dry' };

function heaterOf(draft: Draft) {
  const kind = textIn(draft, 'heaterKind');
  if (kind === undefined || kind === 'none') return null;
  return {
    kind,
    lampId: idOf(WAIT_LAMP),
    waits: waitsFor(numberIn(draft, 'heaterWaitS') ?? 0, numberIn(draft, 'heaterWaitAtC') ?? STATED_AT_C),
    toleranceS: 15,
  };
}

function filtersOf(draft: Draft) {
  const first = { id: 'first', fit: textIn(draft, 'firstFilter') };
  return textIn(draft, 'filterCount') === '2'
    ? [first, { id: 'second', fit: textIn(draft, 'secondFilter') }]
    : [first];
}

/** What each code means for a start where its maker says nothing: common practice, no published source. */
const codeRules = (electric: boolean) => [
  { spn: 100, fmi: 1, judgement: 'blocks', because: 'oil pressure below its floor' },
  { spn: 110, fmi: 3, judgement: 'blocks', because: 'no trust in the coolant temperature' },
  ...(electric
    ? [
        {
          spn: 157,
          fmi: 18,
          judgement: 'watch',
          watchS: 60,
          because: 'low rail pressure right after priming may clear by itself; common practice',
        },
      ]
    : []),
];

function busOf(draft: Draft) {
  const readings = names(draft, 'busReadings');
  return {
    bitRate: 250_000,
    engineAddress: numberIn(draft, 'busAddress') ?? 0,
    readings,
    spoken: readings.filter(quantity => quantity === 'ambientTemperature'),
    overspeedRpm: numberIn(draft, 'overspeedRpm'),
  };
}

const assumed = (rule: string): Origin => ({ from: 'assumed', rule });
const PRACTICE = 'common practice, no published source';

/** Values that no question settles, or only others through a rule. */
const settled: Readonly<Partial<Record<ValueField, Origin>>> = {
  'shutdown.heatSoakLooksAfterS': assumed(PRACTICE),
  faults: assumed(PRACTICE),
  allowedSkips: assumed('strokes of a primer may be left uncounted'),
  sweeps: { from: 'computed', rule: 'from above the idle to four fifths of the rated speed' },
};

/** Where a question does not apply. */
const unasked: Readonly<Partial<Record<ValueField, Origin>>> = {
  steering: { from: 'computed', rule: 'only a vehicle steers by fluid' },
};

/** Of some values a source has only a part: what became of it. */
const partly: Readonly<Partial<Record<ValueField, string>>> = {
  heater: 'at the cold that is stated; the rest is its usual course',
  'oilPressure.floor': 'at idle and at rated speed; the rest follows',
  firstRun: 'that it is run so; its times are usual',
};

/** With how much of it is from there. */
function withPart(field: ValueField, origin: Origin): Origin {
  const rule = partly[field];
  return rule === undefined || origin.rule !== undefined || origin.from === 'assumed'
    ? origin
    : { ...origin, rule };
}

/** Where each value of the profile comes from, by the answers behind it. */
function provenanceOf(answers: Answers, profile: Json): Record<string, Origin> {
  const has = (path: string) =>
    path.split('.').reduce<unknown>((at, key) => (at as Json | undefined)?.[key], profile) !== undefined;
  return Object.fromEntries(
    valueFields.flatMap(field => {
      const origin = settled[field] ?? originOfField(field, answers) ?? unasked[field];
      // That there is no bus was answered too.
      return origin && (has(field) || field === 'bus') ? [[field, withPart(field, origin)]] : [];
    }),
  );
}

/** The profile that these answers make, with what nobody answered as it is proposed; not yet parsed. */
export function profileData(given: Answers): Json {
  const { answers } = fillIn(given);
  const draft = draftOf(answers);
  const electric = textIn(draft, 'fuelling.disabledBy') === 'electric';
  const profile: Json = {
    schema: 'first-fire-profile/1',
    invented: draft.real !== true,
    name: textIn(draft, 'name'),
    version: 1,
  };
  const composed: readonly QuestionId[] = [
    'use',
    'exhaust',
    'fixedSpeedRpm',
    'cutOff',
    'idle.warm',
    'idle.cold',
    'firstRun',
    'bus',
    'busAddress',
    'prelube',
    'jacketHeater',
  ];
  for (const { id, kind, fields } of questions) {
    const value = draft[id];
    if (value === undefined || composed.includes(id) || kind === 'names') continue;
    const [own] = fields;
    if (own === id) put(profile, id, value);
  }
  const range = (id: QuestionId) => {
    const [minRpm, maxRpm] = rangeIn(draft, id) ?? [];
    return { minRpm, maxRpm };
  };
  const [minShare, maxShare] = rangeIn(draft, 'coolantMix') ?? [];
  const port = textIn(draft, 'prelube');
  const fixed = draft.fixedSpeedRpm === true;
  put(profile, 'use', securedOf(draft));
  put(profile, 'exhaust', exhaustOf(draft));
  put(profile, 'steering', draft.steering === true);
  if (fixed) put(profile, 'fixedSpeedRpm', numberIn(draft, 'ratedRpm'));
  put(profile, 'systemVoltage', Number(textIn(draft, 'systemVoltage')));
  put(profile, 'cutOff', { at: textIn(draft, 'cutOff') });
  put(profile, 'idle.warm', range(fixed ? 'fixedRange' : 'idle.warm'));
  put(profile, 'idle.cold', range(fixed ? 'fixedRange' : 'idle.cold'));
  put(profile, 'coolant.minShare', minShare);
  put(profile, 'coolant.maxShare', maxShare);
  put(profile, 'fuel.filters', filtersOf(draft));
  put(profile, 'prelube', port === undefined ? null : { port });
  const jacketHeater = textIn(draft, 'jacketHeater');
  put(profile, 'jacketHeater', jacketHeater === undefined ? null : { at: jacketHeater });
  put(profile, 'firstRun', draft.firstRun === true ? { runS: 120, drainS: 180 } : null);
  put(
    profile,
    'sensors',
    names(draft, 'sensors').map(name => ({ id: idOf(name), name })),
  );
  put(profile, 'lamps', names(draft, 'lamps').map(lampOf));
  put(
    profile,
    'retorque',
    names(draft, 'retorque').map(name => ({ id: idOf(name), name })),
  );
  put(profile, 'heater', heaterOf(draft));
  put(profile, 'oilPressure.floor', floorOf(draft));
  put(
    profile,
    'sweeps',
    (sweepSpeeds(draft) ?? []).map(rpm => ({ rpm })),
  );
  put(profile, 'shutdown.heatSoakLooksAfterS', [120, 420, 900]);
  put(profile, 'faults', codeRules(electric));
  if (draft.bus === true) put(profile, 'bus', busOf(draft));
  put(profile, 'allowedSkips', ['prime.strokes']);
  put(profile, 'provenance', provenanceOf(answers, profile));
  return profile;
}

/** The profile of a finished interview. @throws ZodError where it is not finished, or its answers contradict */
export const buildProfile = (answers: Answers): Profile => profileSchema.parse(profileData(answers));
