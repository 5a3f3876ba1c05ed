import { sum, type Taken } from '../count.ts';
import type { NoiseKind } from '../noises.ts';
import type { Results } from '../results.ts';
import { levelText, percent, share, shareCells, table, takenCells, takenHead } from './cells.ts';

export const togetherKinds: Readonly<Record<string, readonly NoiseKind[]>> = {
  'idle, sweep, fan, wrench': ['idle', 'sweep', 'fan', 'wrench'],
  'babble, radio': ['babble', 'radio'],
};

export function accuracyText({ accuracy }: Results): string[] {
  if (!accuracy) return [];
  const { rows, replyLatency, spent } = accuracy;
  const inNoise = rows.filter(({ level }) => level !== 'clean');
  const byNoise = inNoise.flatMap(({ level, byNoise }) =>
    Object.entries(byNoise).map(([noise, taken]) => [levelText(level), noise, ...shareCells(taken)]),
  );
  const together = inNoise.flatMap(({ level, byNoise }) =>
    Object.entries(togetherKinds).map(([name, kinds]) => {
      const taken = sum(kinds.flatMap(kind => byNoise[kind] ?? []));
      return [levelText(level), name, ...shareCells(taken)];
    }),
  );
  const clean = rows
    .filter(({ level }) => level === 'clean')
    .map(({ taken }) => [levelText('clean'), '', ...shareCells(taken)]);
  return [
    `## Replies (size: ${accuracy.size})`,
    `${accuracy.repliesPerVoice} wordings in the states that take them, each said by ${accuracy.voices.join(', ')}.`,
    table(['speech above noise', 'noise', ...takenHead, 'of'], [...clean, ...together]),
    'By kind of noise:',
    table(['speech above noise', 'noise', ...takenHead, 'of'], byNoise),
    `End of speech to report: median ${replyLatency.medianMs} ms, 95 % within ${replyLatency.p95Ms} ms (${replyLatency.count} replies; time of the sound plus processor time). Processor time per second of sound: ${spent.realTimeFactor.toFixed(2)} s.`,
  ];
}

export function readBackText({ readBack }: Results): string[] {
  if (!readBack) return [];
  return [
    '## Something wrong is read back, and its speaker objects',
    table(
      ['speech above noise', 'taken for agreement', 'heard as an objection', 'of'],
      readBack.rows.map(({ level, takenForAgreement, heard, objections }) => [
        levelText(level),
        String(takenForAgreement),
        String(heard),
        String(objections),
      ]),
    ),
  ];
}

export function stopsText({ stops }: Results): string[] {
  if (!stops) return [];
  return [
    `## Stop words (size: ${stops.size})`,
    table(
      ['speech above noise', 'heard', 'within 500 ms', 'of', 'median', '95 % within'],
      stops.rows.map(({ level, heard, heardInTime, said, latency }) => [
        levelText(level),
        percent(heard, said),
        percent(heardInTime, said),
        String(said),
        `${latency.medianMs} ms`,
        `${latency.p95Ms} ms`,
      ]),
    ),
  ];
}

export function callsText({ calls }: Results): string[] {
  if (!calls) return [];
  return [
    `## Calls for help (size: ${calls.size})`,
    'Fire and injury that are called out beside idle, sweep, fan and wrench, each wording in states that take it for a call, and the replies of the procedure said so, of which none is one. A call waits until it is known that it stands in no answer. The French voices are made by rule, and of such the French network learned: no other French voice was there, and no person called in either language.',
    table(
      [
        'voices',
        'speech above noise',
        'heard',
        'of',
        'median',
        '95 % within',
        'replies taken for a call',
        'of',
      ],
      calls.rows.map(({ of, level, heard, said, latency, falseCalls, others }) => [
        of,
        levelText(level),
        share(heard, said),
        String(said),
        `${latency.medianMs} ms`,
        `${latency.p95Ms} ms`,
        String(falseCalls.length),
        String(others),
      ]),
    ),
    `Not heard: ${missedOften(calls.rows.flatMap(({ missed }) => missed))}.`,
  ];
}

/** Wordings that were missed, the commonest first. */
function missedOften(missed: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const each of missed) counts.set(each, (counts.get(each) ?? 0) + 1);
  const sorted = [...counts].sort(([, a], [, b]) => b - a);
  return sorted.map(([says, count]) => `${count} × "${says}"`).join('; ') || 'nothing';
}

export function talkText({ talk }: Results): string[] {
  if (!talk) return [];
  return [
    `## Talk and noise that answer nothing (size: ${talk.size})`,
    'While one state of the procedure after the other waits. What is taken for a reply or a number is read back, as in a session, and a yes within eight seconds agrees to it.',
    table(
      ['sound', 'hours', 'taken for a reply or number', 'and agreed to', 'for a control word', 'for a stop'],
      talk.rows.map(({ of, hours, gating, confirmed, controls, stops }) => [
        of,
        hours.toFixed(2),
        String(gating),
        String(confirmed ?? ''),
        String(controls),
        String(stops),
      ]),
    ),
  ];
}

export function takenText(
  title: string,
  rows: readonly { readonly name: string; readonly taken: Taken }[],
): string[] {
  return [
    title,
    table(
      ['', 'exact', 'unclear', 'wrong', 'taken for stop', 'of'],
      rows.map(({ name, taken }) => [name, ...takenCells(taken)]),
    ),
  ];
}
