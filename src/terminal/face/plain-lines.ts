import { leftText } from '../../session/clock-text.ts';
import type { LogLine, View } from '../../session/view.ts';
import { fill } from '../../session/wording.ts';
import { bannerWords } from './parts/banner.ts';
import { mayBeTyped, quoted, rangeText } from './parts/choices.ts';
import { logText } from './parts/log-tail.ts';
import { titleBar } from './parts/title-bar.ts';
import { oneLine } from './text.ts';
import type { FaceWords } from './words/index.ts';

const TITLE_WIDTH = 100;

function newIn(log: readonly LogLine[], before: readonly LogLine[]): readonly LogLine[] {
  const last = before.at(-1);
  return last ? log.slice(log.indexOf(last) + 1) : log;
}

const labelled = (label: string, text: string, words: FaceWords) => fill(words.labelled, { label, text });

function timerLine({ timer }: View, words: FaceWords): string | null {
  if (!timer) return null;
  const left = fill(words.left, { time: leftText(timer.leftMs) });
  const text = labelled(oneLine(timer.title), left, words);
  return timer.held ? labelled(words.held, text, words) : text;
}

function mayBeSaid(view: View, words: FaceWords): string {
  const { number } = view;
  const range = number ? [`${number.name} ${rangeText(number, words)}`] : [];
  return [...range, ...mayBeTyped(view).map(wording => quoted(wording, words))].join(' | ');
}

const busWords = ({ bus }: View, words: FaceWords) =>
  bus ? `${words.bus} ${words.busStates[bus.state]} (${oneLine(bus.source)})` : '';

const changed = (value: string, earlier: string | null) => (value !== '' && value !== earlier ? [value] : []);

/** What was printed last of what is asked. */
export interface Asked {
  readonly key: string;
  readonly sights: readonly string[];
  readonly say: string;
}

/**
 * What is seen of a model's engine, as far as it is other than was printed last, and what may be said: they stand
 * behind the question, once for each.
 * @returns the lines, and what has been printed with them
 */
export function askedLines(last: Asked | null, view: View, words: FaceWords): [string[], Asked] {
  const { key, sights = [] } = view;
  const say = mayBeSaid(view, words);
  const sayLine = say === '' ? [] : [`${words.say} ${say}`];
  // Gauges move all the time: they are looked at when something else is asked.
  if (last?.key === key) return [say === last.say ? [] : sayLine, { ...last, say }];
  const seen = sights.filter(text => !last?.sights.includes(text));
  return [
    [...seen.map(text => labelled(words.sights, oneLine(text), words)), ...sayLine],
    { key, sights, say },
  ];
}

/**
 * What became of a session since it was last printed, one line for each: said, heard, engine and state, a
 * hold that begins, pauses or goes on, problems. No control codes.
 *
 * @param before the view printed last; null prints everything
 */
export function plainLines(before: View | null, view: View, words: FaceWords): string[] {
  const timerMoment = ({ timer }: View) => timer && `${timer.title} ${timer.held} ${timer.totalMs}`;
  const timer = timerLine(view, words);
  return [
    ...(before ? [] : [titleBar(view, TITLE_WIDTH, words).text.trim()]),
    ...newIn(view.log, before?.log ?? []).map(entry => logText(entry, words)),
    ...changed(bannerWords(view, words), before && bannerWords(before, words)).map(text => `== ${text} ==`),
    ...(timer && timerMoment(view) !== (before && timerMoment(before)) ? [timer] : []),
    ...changed(busWords(view, words), before && busWords(before, words)),
    ...view.problems
      .filter(sentence => !before?.problems.includes(sentence))
      .map(sentence => labelled(words.problem, oneLine(sentence), words)),
  ];
}
