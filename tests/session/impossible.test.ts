import { describe, expect, it } from 'vitest';
import type { StepId } from '../../prompts/types.ts';
import { goUntil, type Rig, rig } from '../helpers/session-rig.ts';

/** As somebody types it at the keys, where nothing is misheard; what each is held against is in tests/machines/impossible. */
interface Impossible {
  readonly answer: string;
  /** Where the question has been asked. */
  readonly at: string;
  /** What is typed, and the seconds that pass before it. */
  readonly typed: readonly (readonly [afterS: number, text: string])[];
  /** Where the session is then. */
  readonly leadsTo: string;
  /** What it says to that. */
  readonly told: RegExp;
  /** Steps that do not pass by it. */
  readonly holds: readonly StepId[];
}

const list: readonly Impossible[] = [
  {
    answer: 'coolant 190, 150, 86 °F within 8 seconds opens no cap',
    at: 'signOff.cool.asking',
    typed: [
      [0, '190'],
      [0, 'correct'],
      [4, '150'],
      [4, '86'],
    ],
    leadsTo: 'signOff.cool.asking',
    told: /Coolant 86 °F\? It should be at least \d+ °F: it was 190 °F 0:\d\d ago\. Look again/,
    holds: ['signOff.cool', 'signOff.coolantLevel'],
  },
  {
    answer: '"thermostat open" at 60 °F ends no warm-up',
    at: 'warmUp.watch.asking',
    typed: [
      [0, '60'],
      [300, 'thermostat open'],
    ],
    leadsTo: 'warmUp.watch.asking',
    told: /Thermostat open\? Then coolant has to show at least \d+ °F\. Read the gauge/,
    holds: ['warmUp.watch'],
  },
  {
    answer: 'a freeze point of -80 °F is of no mix that this engine may have',
    at: 'fill.coolantFreezePoint.asking',
    typed: [
      [0, '-80'],
      [0, 'correct'],
    ],
    leadsTo: 'fill.coolantFreezePoint.asking',
    told: /Freeze point −80 °F: −\d+ °F to \d+ °F\. Look again/,
    holds: ['fill.coolantFreezePoint'],
  },
  {
    answer: 'a coldest night of 60 °F with air at 41 is for the second person',
    at: 'job.coldestNight.asking',
    typed: [
      [0, '60'],
      [0, '60'],
    ],
    leadsTo: 'job.coldestNight.vouching',
    told: /Second person: read it yourself/,
    holds: ['job.coldestNight'],
  },
  {
    answer: 'running coolant of -20 °F is questioned',
    at: 'checks.coolant.asking',
    typed: [[0, '-20']],
    leadsTo: 'checks.coolant.asking',
    told: /Coolant −20 °F\? It should be at least \d+ °F: the air is 23 °F\. Look again/,
    holds: ['checks.coolant'],
  },
  {
    answer: '"pressure shows" after a second of cranking is looked at by both',
    at: 'noFuelCrank.untilPressure.cranking',
    typed: [[1, 'pressure shows']],
    leadsTo: 'noFuelCrank.untilPressure.early',
    told: /Pressure shows after 0:03 of cranking\? It takes at least 0:10\. Second person: look at the gauge too/,
    holds: ['noFuelCrank.untilPressure'],
  },
  {
    answer: 'an idle of 3500, five times, is an overspeed at the first',
    at: 'checks.idle.item1',
    typed: [
      [0, '3500'],
      [0, '3500'],
      [0, '3500'],
      [0, '3500'],
      [0, '3500'],
      [8, ''],
    ],
    leadsTo: 'stopped.makingSafe',
    told: /Stop: overspeed! Key off, cut its fuel, now\./,
    holds: ['checks.idle'],
  },
  {
    answer: '5 psi confirmed, then "false alarm": no new start without a look at the oil',
    at: 'checks.oilPressure.asking',
    typed: [
      [0, '5'],
      [0, 'correct'],
      [5, 'all is off'],
      [0, 'wrong'],
      [0, 'false alarm'],
      [0, 'ready'],
    ],
    leadsTo: 'fill.oilFilterPreFilled.checking',
    told: /To do again: .*Oil level/,
    holds: ['fill.oilLevel', 'noFuelCrank.untilPressure', 'firstFire.crank'],
  },
];

async function typed(run: Rig, { typed: lines }: Impossible): Promise<void> {
  for (const [afterS, text] of lines) {
    if (afterS > 0) await run.pass(afterS * 1000);
    if (text !== '') await run.type(text);
  }
}

describe('impossible answers, typed', () => {
  it.each(list.map(each => [each.answer, each] as const))('%s', async (_, each) => {
    const run = await rig('demo-six', 'us');
    await run.session.begin();
    await goUntil(run, each.at);
    const before = run.said.length;
    await typed(run, each);
    expect(run.key()).toBe(each.leadsTo);
    expect(run.said.slice(before).join('\n').replaceAll(' ', ' ')).toMatch(each.told);
    for (const step of each.holds) expect(run.session.moment.context.done).not.toContain(step);
    await run.record.close();
  });
});
