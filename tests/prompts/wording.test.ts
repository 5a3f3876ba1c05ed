import { describe, expect, it } from 'vitest';
import type { Said } from '../../machines/context.ts';
import { procedureFor } from '../../machines/first-start.ts';
import { type Moment, stateName } from '../../machines/moment.ts';
import { languageCodes, languages } from '../../prompts/index.ts';
import { grammarOf } from '../../src/session/grammar.ts';
import { unitSystems } from '../../src/session/units.ts';
import { wordSaid } from '../../src/session/wording.ts';
import { voiceLanguage } from '../../src/voice/languages/index.ts';
import { comparable } from '../../src/voice/languages/spelling.ts';
import { Driver, type Happened, machineFor, takeStep } from '../machines/helpers/driver.ts';
import { explore, type Reach } from '../machines/helpers/explore.ts';
import { demoBoat, demoFour, demoGenset, demoSix, shortest } from '../machines/helpers/profiles.ts';

const reach: Reach = {
  returns: 0,
  stopAt: ({ moment }) => stateName(moment).startsWith('sweeps.third.'),
  causes: () => true,
  codes: [
    [100, 1],
    [157, 18],
    [5000, 7],
  ],
  everything: ({ moment }) => !stateName(moment).startsWith('stopped'),
};
const graph = explore(shortest, reach);
const runs = [demoSix, demoFour, demoGenset, demoBoat].map(profile => new Driver(profile).goodToTheEnd());

/** Everything that happens in all-good starts and on all paths, and what is said at the words always understood. */
const happened: Happened[] = [
  ...graph.edges.map(edge => edge.happened),
  ...runs.flatMap(run => run.history),
  ...[...graph.places.values()].flatMap(({ moment, nowMs }) =>
    (['status', 'help', 'timeLeft', 'unclear'] as const).map(type =>
      takeStep(machineFor(shortest), moment, { type, atMs: nowMs, by: 'technician', via: 'voice' }),
    ),
  ),
];
const said: Said[] = happened.flatMap(({ said: lines }) => lines);
const moments: Moment[] = [
  ...[...graph.places.values()].map(({ moment }) => moment),
  ...runs.flatMap(run => run.history.map(({ after }) => after)),
];

/** The blanks of a template. */
const blanksIn = (template: string) => [...template.matchAll(/\{(\w+)\}/g)].map(([, name]) => name ?? '');

const callOuts = ['stopHeard', 'stopCause', 'stopCauseCut'] as const;
const isCallOut = (line: string) => callOuts.some(each => each === line);

/** Every text in a part of the language, with where it stands. */
function textsIn(value: unknown, path: string): [path: string, text: string][] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => textsIn(inner, `${path}.${key}`));
}

describe.each(languageCodes)('in the language %s:', code => {
  const language = languages[code];
  const known = new Map<string, string>();
  /** What an ear makes of a text: words that sound alike are one. */
  const compared = (text: string) => {
    const same = known.get(text) ?? comparable(text, voiceLanguage(code));
    known.set(text, same);
    return same;
  };
  const stops = language.stopWordings.map(compared);
  const stopsIn = (text: string) => stops.filter(wording => ` ${compared(text)} `.includes(` ${wording} `));

  describe('what is asked', () => {
    it.each([
      ['demo-six', demoSix],
      ['demo-four', demoFour],
      ['demo-genset', demoGenset],
      ['demo-boat', demoBoat],
    ] as const)('has a figure for each of its blanks, at every step of %s', (_, profile) => {
      const run = new Driver(profile).goodToTheEnd();
      for (const step of procedureFor(profile)) {
        const values = { ...step.words, ...step.values?.(run.context) };
        // What a burst announces is put before its question by the kind of the step.
        const own = step.kind === 'crank' ? { before: '', ...values } : values;
        const missing = blanksIn(language.steps[step.id].ask).filter(blank => !(blank in own));
        expect([step.id, missing]).toEqual([step.id, []]);
      }
    });

    it('is answered in its own words: each question that is answered by a reply speaks the reply', () => {
      const plain = (text: string) => text.toLowerCase().replace(/<[^>]*>/g, '');
      const checked = new Set<string>();
      for (const profile of [demoSix, demoFour, demoGenset, demoBoat])
        for (const step of procedureFor(profile)) {
          if (step.kind !== 'confirm' || step.drill) continue;
          const ask = plain(language.steps[step.id].ask);
          const spoken = language.replies[step.ok].some(wording => ask.includes(wording));
          expect([step.id, spoken]).toEqual([step.id, true]);
          checked.add(step.id);
        }
      expect(checked.size).toBeGreaterThan(30);
    });
  });

  describe('what is said', () => {
    it('has a figure for each of its blanks, wherever it is said', () => {
      const missing = said.flatMap(({ line, values, step, prefix }) => [
        ...(line === 'ask' ? blanksIn(language.steps[step].ask) : blanksIn(language.lines[line]))
          .filter(blank => !(blank in values))
          .map(blank => `${step} ${line} {${blank}}`),
        ...(prefix && blanksIn(language.lines[prefix]).length > 0 ? [`${step} ${prefix}`] : []),
      ]);
      expect([...new Set(missing)]).toEqual([]);
    });

    it.each(unitSystems)(
      'begins each sentence as one, and leaves no braces and no nonsense, in %s units',
      units => {
        const seen = new Set<string>();
        for (const line of said) {
          const { spoken, shown } = wordSaid(line, language, units);
          // What is for the eye only is spoken by nothing.
          for (const text of spoken === '' ? [shown] : [spoken, shown]) {
            if (seen.has(text)) continue;
            seen.add(text);
            expect(text).not.toMatch(/[{}]|undefined|null|NaN|Infinity|\[object/);
            expect(text).not.toMatch(/(^|[.?!] )[¿¡]?\p{Ll}/u);
            expect(text).not.toMatch(code === 'fr' ? / {2}|^ | $| [.,]|^$/ : / {2}|^ | $| [.,:?!]|^$/);
          }
          expect(spoken).not.toMatch(/\d/);
        }
        expect(seen.size).toBeGreaterThan(200);
      },
    );

    it('never holds a wording of the stop, but for the call-outs: the tool must not stop itself', () => {
      const heard = said
        .filter(({ line }) => !isCallOut(line))
        .map(line => wordSaid(line, language, 'us').spoken)
        .filter(text => stopsIn(text).length > 0);
      expect([...new Set(heard)]).toEqual([]);
    });

    it('calls a stop out with the very word, so that nobody mistakes it', () => {
      for (const line of callOuts) expect(stopsIn(language.lines[line])).toContain('stop');
    });
  });

  describe('the language', () => {
    it('holds a wording of the stop nowhere but in the stop wordings and the call-outs', () => {
      const { stopWordings: _, ...rest } = language;
      const found = textsIn(rest, '').filter(
        ([path, text]) => stopsIn(text).length > 0 && !callOuts.some(line => path === `.lines.${line}`),
      );
      expect(found).toEqual([]);
    });

    it('has no wording for a reply that begins with a wording of the stop', () => {
      for (const wording of Object.values({ ...language.replies, ...language.controls }).flat())
        expect(stopsIn(wording)).toEqual([]);
    });

    it('says everything in plain lower-case words where something is to be heard', () => {
      for (const wording of [
        ...Object.values({ ...language.replies, ...language.controls }).flat(),
        ...language.stopWordings,
      ])
        expect(wording).toMatch(/^[a-zà-ÿ']+( [a-zà-ÿ']+)*$/);
    });
  });

  describe('what may be said', () => {
    it('means one thing only, in every state that is reached, controls and stop included', () => {
      for (const moment of moments)
        for (const via of ['voice', 'keys'] as const) {
          const { key, replies: offered, stop, number } = grammarOf(moment, language, 'us', via);
          const all = [
            ...stop.map(wording => ['stop', wording] as const),
            ...offered.flatMap(({ id, wordings }) => wordings.map(wording => [id, wording] as const)),
          ];
          const twice = all.filter(([id, wording]) =>
            all.some(([other, same]) => compared(same) === compared(wording) && other !== id),
          );
          expect([key, twice]).toEqual([key, []]);
          expect(new Set(all.map(([, wording]) => compared(wording))).size).toBe(all.length);
          if (number) expect(number.min).toBeLessThan(number.max);
        }
    });

    it.each([
      ['yes', 'no'],
      ['lit', 'dark'],
      ['lampOut', 'lampStays'],
      ['oilPressureShows', 'nothingYet'],
      ['pressureGood', 'noOilPressure'],
      ['fired', 'nothingYet'],
      ['pointGood', 'leak'],
      ['pointGood', 'somethingWrong'],
      ['pointGood', 'stillLooking'],
    ] as const)(
      '%s never differs from %s in one short word only: noise takes one for the other',
      (yes, no) => {
        const near = (one: readonly string[], other: readonly string[]) => {
          const differ = one.flatMap((word, i) => (word === other[i] ? [] : [[word, other[i] ?? '']]));
          const short = differ.flat().every(word => word.length <= 5);
          return one.length > 1 && one.length === other.length && differ.length === 1 && short;
        };
        const pairs = language.replies[yes].flatMap(one =>
          language.replies[no].map(other => [one, other] as const),
        );
        expect(pairs.filter(([one, other]) => near(one.split(' '), other.split(' ')))).toEqual([]);
      },
    );

    it('is always the stop, whatever the state', () => {
      for (const moment of moments)
        expect(grammarOf(moment, language, 'metric', 'voice').stop).toEqual(language.stopWordings);
    });
  });
});
