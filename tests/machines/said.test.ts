import { describe, expect, it } from 'vitest';
import type { Said } from '../../machines/context.ts';
import { offerOf } from '../../machines/moment.ts';
import type { Note } from '../../machines/toolkit.ts';
import type { Quantity } from '../../machines/vocabulary.ts';
import { languages } from '../../prompts/index.ts';
import type { ReplyId } from '../../prompts/types.ts';
import { noteKinds } from '../../src/record/vocabulary/kinds.ts';
import type { EventBody } from '../../src/session/hearing.ts';
import { wordSaid } from '../../src/session/wording.ts';
import { Driver, type Happened } from './helpers/driver.ts';
import { goodValue } from './helpers/good.ts';
import { demoBoat, demoGenset, demoSix } from './helpers/profiles.ts';

const controls = ['hold', 'goBack', 'skip', 'takeBack', 'status', 'timeLeft', 'help', 'sayAgain'] as const;
const vias = ['voice', 'keys', 'bus'] as const;

const reply = (id: ReplyId): EventBody => ({ type: 'reply', id });
const value = (quantity: Quantity, si: number): EventBody => ({ type: 'value', quantity, si });

/** What a gauge shows, in SI, besides what is good: far too little, far too much, and just off. */
const shown = (good: number) => [0, good * 0.6, good * 1.4, good + 60];

/** Everything that may be answered, said or read at a moment. */
const bodiesAt = ({ moment }: Driver): EventBody[] => {
  const { replies, quantity, corrects } = offerOf(moment);
  const number = quantity ?? corrects;
  return [
    ...replies.map(reply),
    ...(number
      ? [goodValue(number, moment), ...shown(goodValue(number, moment))].map(si => value(number, si))
      : []),
    ...controls.map(type => ({ type })),
    { type: 'unclear' },
    { type: 'stop' },
  ];
};

/** What happens at each place of a start where all goes well, and, where it led on, at its read-back. */
function happenedIn(driver: Driver): Happened[] {
  const all: Happened[] = [];
  while (!driver.over) {
    for (const body of bodiesAt(driver)) {
      for (const via of body.type === 'value' ? vias : (['voice'] as const)) {
        const one = driver.fork([]).send(body, { via });
        all.push(one.last);
        if (one.over || one.name === driver.name) continue;
        for (const next of [reply('yes'), reply('no'), { type: 'unclear' } as const])
          all.push(one.fork([]).send(next).last);
        if (one.alarmMs !== null) all.push(one.fork([]).ring().last);
      }
    }
    driver.good();
    all.push(driver.last);
  }
  return all;
}

const each = <T>(all: readonly T[]): T[] => [...new Map(all.map(one => [JSON.stringify(one), one])).values()];

const templateOf = ({ line, step }: Said): string | undefined =>
  line === 'ask' ? languages.en.steps[step].ask : languages.en.lines[line];

describe.each([
  ['demo-six', demoSix],
  ['demo-genset', demoGenset],
  ['demo-boat', demoBoat],
] as const)('whatever is answered in a start with %s', (_, profile) => {
  const happened = happenedIn(new Driver(profile));

  it('what is said is a sentence of the procedure, and all its blanks are filled', () => {
    const wrong = each(happened.flatMap(({ said }) => said)).flatMap(said => {
      const template = templateOf(said);
      if (template === undefined) return [`${said.step} says ${said.line}`];
      const blanks = [...template.matchAll(/\{(\w+)\}/g)].map(([, name]) => name ?? '');
      return blanks
        .filter(name => !(name in said.values))
        .map(name => `${said.step} ${said.line} lacks ${name}`);
    });
    expect(each(wrong)).toEqual([]);
  });

  it('what is said can be worded, without a figure that is none', () => {
    const wrong = each(happened.flatMap(({ said }) => said)).flatMap(said => {
      const { spoken, shown } = wordSaid(said, languages.en, 'metric');
      return shown === '' || /NaN|undefined|[{}]/.test(`${spoken} ${shown}`)
        ? [`${said.step}: ${spoken} | ${shown}`]
        : [];
    });
    expect(wrong).toEqual([]);
  });

  it('what goes on the record is of a kind that is known there, with all that belongs to it', () => {
    const wrong = each(happened.flatMap(({ notes }) => notes)).flatMap(({ kind, data }: Note) => {
      const parsed = noteKinds[kind]?.safeParse(JSON.parse(JSON.stringify(data)));
      return parsed?.success ? [] : [`${kind} ${JSON.stringify(data)}: ${parsed?.error.message}`];
    });
    expect(wrong).toEqual([]);
  });
});
