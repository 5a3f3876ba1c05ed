import type { Figure } from '../../archive/archive.ts';
import { isMeasureName, measures } from '../../archive/measures.ts';
import type { ArchivedSession } from '../../archive/schema.ts';
import { SHOWN_DIGITS } from '../../archive/versions.ts';
import { dateTime, duration, shownAs } from '../../report/format.ts';
import { type Manner, mannerOf } from '../../report/manner.ts';
import { capital } from '../../report/names.ts';
import type { UnitSystem } from '../../session/units.ts';
import { oneLine, pad } from '../face/text.ts';
import { count } from './count.ts';

const minute = (at: string): string => (at === '' ? '?' : `${at.slice(0, 10)} ${at.slice(11, 16)}`);

/** How far a record can be believed, in a word or two; nothing for a sound one. */
export const doubt: Readonly<Record<ArchivedSession['state'], string>> = {
  sound: '',
  torn: 'NOT VERIFIED: breaks off',
  broken: 'NOT VERIFIED: altered',
};

/** A session, and whether a model stood in for its engine. */
export type MarkedSession = ArchivedSession & { readonly rehearsal: boolean };

/** A table of sessions; a rehearsal is marked, as nothing else tells it from a start. */
export function foundLines(sessions: readonly MarkedSession[], more: boolean): string[] {
  if (sessions.length === 0) return ['No session is like that.'];
  const rows = sessions.map(session =>
    [
      session.id.slice(0, SHOWN_DIGITS),
      minute(session.started),
      pad(session.outcome, 10),
      pad(oneLine(session.vehicle), 28),
      pad(oneLine(session.technician), 20),
      [session.rehearsal ? 'REHEARSAL' : '', doubt[session.state]].filter(words => words !== '').join('; '),
    ]
      .join('  ')
      .trimEnd(),
  );
  const end = more
    ? 'There are more; narrow the search or raise --limit.'
    : `${count(sessions.length, 'session')}.`;
  return [...rows, end];
}

/** Everything about one session. */
export function shownLines(
  session: ArchivedSession,
  figures: readonly Figure[],
  units: UnitSystem,
  isRehearsal: boolean,
): string[] {
  const manner = mannerOf('en', units);
  const { step } = manner.name;
  const line = (name: string, value: string) => `${pad(name, 12)} ${oneLine(value)}`;
  const believed =
    session.state === 'sound' ? 'as written when it was added' : `${doubt[session.state]}. ${session.fault}`;
  return [
    line('Id', session.id),
    line('Record', believed),
    ...(isRehearsal ? [line('Kind', 'a rehearsal: a model stood in for the engine')] : []),
    ...(session.remark === '' ? [] : [line('Remark', session.remark)]),
    line('Vehicle', session.vehicle),
    line('Engine', `${session.engine} (${session.profile})`),
    line('People', `${session.technician}, ${session.second}; supervisor ${session.supervisor}`),
    line('Began', session.started === '' ? '?' : dateTime(session.started, manner)),
    line('Lasted', session.seconds === null ? '?' : duration(session.seconds * 1000, manner)),
    line(
      'Outcome',
      session.outcome + (step(session.step) === session.step ? '' : `, at "${step(session.step)}"`),
    ),
    line('Entries', `${session.entries}, last hash ${session.head}`),
    line('Added', `${dateTime(session.added, manner)}, from ${session.source}`),
    ...figures.map(({ measure, value, nth }) => figureLine(measure, value, nth, manner)),
  ];
}

function figureLine(measure: string, value: number, nth: number, manner: Manner): string {
  const known = isMeasureName(measure) ? measures[measure] : undefined;
  const again = nth > 1 ? ` (${nth}.)` : '';
  const text =
    known?.kind === 'session'
      ? duration(value * 1000, manner)
      : known
        ? shownAs(known.unit, manner).value(value)
        : String(value);
  return `  ${capital(known?.title ?? measure)}${again}: ${text}`;
}
