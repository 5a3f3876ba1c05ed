import { isSameEngine } from '../profile/same-engine.ts';
import type { Profile } from '../profile/schema.ts';
import type { SessionHeader } from '../session/header.ts';
import type { PastStarts } from '../session/past-starts/beside-others.ts';
import { figureNames } from '../session/past-starts/figures.ts';
import type { Archive } from './archive.ts';
import { storable } from './fold.ts';
import { headerIn } from './rehearsals.ts';

/** A year's starts of one engine tell what is normal; older ones are of other people and another climate. */
const MOST_STARTS = 60;
/** So many rows are looked through for them. */
const MOST_ROWS = 500;

/**
 * What the earlier starts of this engine measured: sound records that were signed off, the last sixty, each with the
 * first value of its figure, as a start that was begun anew is no longer like the others. Practice stands beside
 * practice, and a real start beside real ones.
 */
export async function pastStarts(
  archive: Archive,
  { profile, rehearsal }: Pick<SessionHeader, 'profile' | 'rehearsal'>,
): Promise<PastStarts> {
  const isAlike = alikeIn(archive, profile, rehearsal === true);
  const past: { -readonly [Name in keyof PastStarts]: PastStarts[Name] } = {};
  for (const figure of figureNames) {
    const rows = await archive.measured(figure, { engine: profile.name, outcome: 'signed-off' }, MOST_ROWS);
    const values: number[] = [];
    for (const { session, nth, value } of rows.toReversed()) {
      if (values.length >= MOST_STARTS) break;
      if (nth !== 1 || session.state !== 'sound' || session.profile !== storable(profile.name)) continue;
      if (await isAlike(session.id)) values.push(value);
    }
    past[figure] = values;
  }
  return past;
}

/** Looks into the beginning of a record, once for each, whether it is a start of this engine. */
function alikeIn(archive: Archive, profile: Profile, rehearsal: boolean) {
  const known = new Map<string, boolean>();
  return async (id: string): Promise<boolean> => {
    const before = known.get(id);
    if (before !== undefined) return before;
    const header = headerIn(await archive.log(id));
    const alike =
      header !== null && isSameEngine(header.profile, profile) && (header.rehearsal === true) === rehearsal;
    known.set(id, alike);
    return alike;
  };
}
