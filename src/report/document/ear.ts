import { fill } from '../../session/wording.ts';
import { number, shownAs, time } from '../format.ts';
import type { Manner } from '../manner.ts';
import type { EarStory, ReportModel } from '../model.ts';
import { own } from '../own.ts';
import { timePlot } from '../plot/time-plot.ts';
import type { Block } from './blocks.ts';
import { cells, longTable } from './tables.ts';

/** What goes on at one speed is written twice a minute. */
const LONGEST_JOINED_MS = 45_000;
const SIZE = { width: 515, height: 118 };

/** What the microphone heard of the engine: its speed through the session, and what happened. Absent where it heard none. */
export function earSection({ ear, readings, timeLine }: ReportModel, manner: Manner): Block[] {
  const heard = readings.filter(({ source }) => source === 'ear');
  if (ear.length === 0 && heard.length === 0) return [];
  const { ear: words } = manner.words;
  const speed = shownAs('rpm', manner);
  // What is heard after it was lost, had stalled, or was silent for long, is another stretch.
  const ends = ear.filter(({ happened }) => happened === 'stalled' || happened === 'lost');
  const beforeGaps = heard.filter(
    ({ timeMs }, i) => (heard[i + 1]?.timeMs ?? timeMs) - timeMs > LONGEST_JOINED_MS,
  );
  const stops = [
    ...timeLine.stops,
    ...[...ends, ...beforeGaps].map(({ timeMs }) => ({ fromMs: timeMs, toMs: timeMs, drill: false })),
  ];
  return [
    { type: 'section', title: words.title, note: words.note },
    ...(heard.length < 2
      ? []
      : [
          {
            type: 'figures',
            perRow: 1,
            figures: [
              {
                title: fill(words.speed, { unit: speed.unit }),
                alt: manner.counted(heard.length, words.alt),
                scene: timePlot(heard, { phases: timeLine.phases, stops }, speed.toUser, manner, SIZE),
              },
            ],
          } as const,
        ]),
    ...(ear.length === 0
      ? []
      : longTable(
          [
            { title: manner.words.tables.at, width: 0.12, align: 'right' },
            { title: words.happened, width: 0.5 },
            { title: words.at, width: 0.16, align: 'right' },
            { title: words.microphone, width: 0.22 },
          ],
          ear.map(each =>
            cells(
              time(each.timeMs),
              toldOf(each, manner),
              each.rpm === undefined ? '' : speed.value(Math.round(each.rpm)),
              each.microphone ?? '',
            ),
          ),
          manner,
        )),
  ];
}

function toldOf({ happened, hunting, change }: EarStory, manner: Manner): string {
  const { ear: words } = manner.words;
  const speed = shownAs('rpm', manner);
  return fill(own(words.what, happened) ?? happened, {
    swing: hunting ? speed.value(Math.round(hunting.amplitudeRpm)) : '',
    period: hunting ? number(hunting.periodS, 1, manner) : '',
    from: change ? number(change.fromHz, 0, manner) : '',
    to: change ? number(change.toHz, 0, manner) : '',
    db: change ? number(change.db, 0, manner) : '',
  });
}
