import type { LogLine, View } from '../../session/view.ts';
import { bannerWords } from './parts/banner.ts';
import { leftText } from './parts/hold-bar.ts';
import { logText } from './parts/log-tail.ts';
import { titleBar } from './parts/title-bar.ts';
import { oneLine } from './text.ts';
import { words } from './words.ts';

const TITLE_WIDTH = 100;

function newIn(log: readonly LogLine[], before: readonly LogLine[]): readonly LogLine[] {
  const last = before.at(-1);
  return last ? log.slice(log.indexOf(last) + 1) : log;
}

function timerLine({ timer }: View): string | null {
  if (!timer) return null;
  const held = timer.held ? `${words.held}: ` : '';
  return `${held}${oneLine(timer.title)}: ${leftText(timer.leftMs)} ${words.left}`;
}

function mayBeSaid({ choices, number }: View): string {
  const range = number ? [`${number.name} ${number.min} to ${number.max} ${number.unit}`.trim()] : [];
  return [...range, ...choices.map(wording => `"${oneLine(wording)}"`)].join(' | ');
}

const busWords = ({ bus }: View) =>
  bus ? `${words.bus} ${words.busStates[bus.state]} (${oneLine(bus.source)})` : '';

const changed = (value: string, earlier: string | null) => (value !== '' && value !== earlier ? [value] : []);

/**
 * What became of a session since it was last printed, one line for each: said, heard, engine and state, a
 * hold that begins, pauses or goes on, what may be said, problems. No control codes.
 *
 * @param before the view printed last; null prints everything
 */
export function plainLines(before: View | null, view: View): string[] {
  const timerMoment = ({ timer }: View) => timer && `${timer.title} ${timer.held} ${timer.totalMs}`;
  const timer = timerLine(view);
  return [
    ...(before ? [] : [titleBar(view, TITLE_WIDTH).text.trim()]),
    ...newIn(view.log, before?.log ?? []).map(logText),
    ...changed(bannerWords(view), before && bannerWords(before)).map(text => `== ${text} ==`),
    ...(timer && timerMoment(view) !== (before && timerMoment(before)) ? [timer] : []),
    ...changed(busWords(view), before && busWords(before)),
    ...view.problems
      .filter(sentence => !before?.problems.includes(sentence))
      .map(sentence => `${words.problem}: ${oneLine(sentence)}`),
    // Gauges move all the time: they are looked at when something else is asked.
    ...(view.key === before?.key ? [] : (view.sights ?? []).map(text => `${words.sights}: ${oneLine(text)}`)),
    ...changed(mayBeSaid(view), before && mayBeSaid(before)).map(text => `${words.say} ${text}`),
  ];
}
