import { expect, it } from 'vitest';
import { buildFirstStart } from '../../machines/first-start.ts';
import { buildProfile } from '../../src/interview/build.ts';
import { type Answers, answerTyped, nextQuestion, withAnswer } from '../../src/interview/interview.ts';

/** What somebody typed with `docs/engine-sheet.md` in hand, in the order in which it was asked. */
const typed: readonly string[] = [
  // The plate, in US units; an engine for practice.
  ...['us', 'no', 'Tractor 5.2', 'IE-5.2T', '4', '318 cu in', '2300', 'vehicle', 'dry', 'none', 'yes', '12'],
  ...['yes', 'lever', 'plate', 'shut-off lever at the pump', '2550 plate', '', '700-800', '700-950'],
  // Pages 5 and 4.
  ...[
    '15 p 5',
    '45 p 5',
    '75 p 5',
    '10 p 7',
    '14 p 4',
    '15W40, 10W-30 below 0 F p 5',
    'preFilled',
    '21 p 4',
    'p 4',
    '40-60 p 4',
  ],
  // Pages 6 and 7, and the panel.
  ...[
    '180 p 6',
    '203 p 6',
    '221 p 6',
    '13 p 6',
    '48',
    '1',
    'p 6',
    'p 6',
    'p 6',
    'glow',
    '20 p 7',
    '0 p 7',
    '170 p 7',
  ],
  ...['p 7', 'p 7', '3 p 7', 'gallery plug beside the filter head', 'p 7', 'p 7'],
  ...['oil pressure, coolant temperature', 'oil pressure, charging, wait to start', '', 'no'],
];

it('the sheet in the docs makes an engine in at most sixty answers, none of them refused', () => {
  let answers: Answers = {};
  const left = [...typed];
  for (let next = nextQuestion(answers); next; next = nextQuestion(answers)) {
    const { question, proposal } = next;
    const text = left.shift();
    const read = text === '' && proposal ? null : answerTyped(text ?? '', question, answers, proposal);
    if (read && !read.ok) throw new Error(`${question.id}, "${text}": ${read.sentence}`);
    const answer = read ? { value: read.value, origin: read.origin } : proposal;
    if (answer) answers = withAnswer(answers, question.id, answer);
  }
  expect(left).toEqual([]);
  expect(typed.length).toBeLessThanOrEqual(60);
  const profile = buildProfile(answers);
  expect(profile).toMatchObject({
    use: { kind: 'vehicle' },
    fuelling: { disabledBy: 'lever' },
    prelube: { port: 'gallery plug beside the filter head' },
    // A tenth above 2550, as is put forward.
    overspeedRpm: 2810,
  });
  expect(profile.oil.capacityL).toBeCloseTo(13.25, 2);
  expect(profile.provenance['coolant.kind']).toEqual({ from: 'manual', page: '4' });
  // Page 7: "20 seconds at 0 °F", which is -17.8 °C.
  expect(profile.heater?.waits.find(({ atC }) => Math.abs(atC + 17.78) < 0.01)?.waitS).toBe(20);
  expect(profile.provenance.turbo).toEqual({ from: 'seen' });
  buildFirstStart(profile);
});
