import { wasTriedOut } from '../../../machines/drills.ts';
import type { Language } from '../../../prompts/types.ts';
import type { Debrief, FaultDebrief } from '../../rehearsal/debrief.ts';
import { elapsedText } from '../../session/clock-text.ts';
import { shownUnit, type UnitSystem } from '../../session/units.ts';
import { fill, showMeasure, stepTitle } from '../../session/wording.ts';
import type { FaceWords } from '../face/words/index.ts';

/** In whose words and units a debrief is told. */
interface Told {
  readonly words: FaceWords['debrief'];
  readonly language: Language;
  readonly units: UnitSystem;
}

const look = (table: Readonly<Record<string, string>>, key: string) => table[key] ?? key;

function faultLine({ fault, phase, noticed }: FaultDebrief, { words, language }: Told): string {
  const about = { wrong: words.wrong[fault], phase: look(language.phases, phase) };
  if (!noticed) return fill(words.missed, about);
  const { by, what, step, afterS } = noticed;
  const ways = { stop: words.byStop, line: words.byLine, reading: words.byReading, code: words.byCode };
  const how = fill(ways[by], {
    what: by === 'stop' ? look(language.causes, what) : what,
    step: stepTitle(language, step),
  });
  return fill(words.noticed, { ...about, time: elapsedText(afterS * 1000), how });
}

function contradictionLine(
  { step, atS, value }: Debrief['contradictions'][number],
  { words, language, units }: Told,
): string {
  const about = { time: elapsedText(atS * 1000), step: stepTitle(language, step) };
  if (!value) return fill(words.notSo, about);
  const show = (si: number) => showMeasure(si, shownUnit(value.quantity), language, units);
  return fill(words.saidShown, {
    ...about,
    name: language.quantities[value.quantity].name,
    said: show(value.said),
    shown: show(value.shown),
  });
}

function causeText(step: string, cause: string | null, { words, language }: Told): string {
  if (cause !== null) return look(language.causes, cause);
  return wasTriedOut(step, cause) ? words.drill : words.noCause;
}

/** The debrief in lines for the screen, in the words of those who were led through it. */
export function debriefLines(debrief: Debrief, told: Told): string[] {
  const { words, language } = told;
  const { outcome, sessionS, faults, neverCame, contradictions, stops, unclear } = debrief;
  return [
    fill(words[outcome], { time: elapsedText(sessionS * 1000) }),
    fill(words.counts, {
      came: String(faults.length),
      missed: String(faults.filter(({ noticed }) => !noticed).length),
      unclear: String(unclear),
    }),
    ...faults.map(fault => faultLine(fault, told)),
    ...neverCame.map(({ name, phase }) =>
      fill(words.neverCame, { wrong: words.wrong[name], phase: look(language.phases, phase) }),
    ),
    ...contradictions.map(each => contradictionLine(each, told)),
    ...stops.map(({ atS, step, cause }) =>
      fill(words.stop, {
        time: elapsedText(atS * 1000),
        step: stepTitle(language, step),
        cause: causeText(step, cause, told),
      }),
    ),
  ];
}

/** How a rehearsal ends for whoever called the program: as a start does, and by a code of its own where it went wrong. */
export function rehearsalCode({ outcome, faults, contradictions }: Debrief): number {
  if (outcome === 'left') return 4;
  if (faults.some(({ noticed }) => !noticed) || contradictions.length > 0) return 5;
  return outcome === 'signedOff' ? 0 : 3;
}
