import { z } from 'zod';
import type { Entry } from '../entry.ts';
import { vocabulary } from './opened.ts';
import { isRestart } from './read.ts';

/**
 * The vocabulary that this program writes. It stands in the first entry of each run of the program (`opened`,
 * `resumed`, `recovered`) and holds for the entries behind it:
 *
 * 1. Not named. The entry `resumed` stands on a clock of its own that begins anew.
 * 2. The entry `resumed` stands on the session's clock, like those behind it.
 * 3. What has to be confirmed depends on how an answer came (`via`): by keys and touch most answers count at once.
 *    Several steps may be answered together; `takeBack` takes a number back. What can hardly be true is `doubted`, may
 *    be `vouched` for by somebody else, and an engine may be `barred` for good. Events of older records led elsewhere:
 *    such records are read and told, but neither gone on with nor carried out once more.
 * 4. What the microphone hears of the engine is `engineHeard`, and stands beside an answer as `ear`; answers without it
 *    lead where they led.
 * 5. Where a start stands among the earlier ones of the shop is `besideOthers`; a record says whether its engine was
 *    one to practise on (`rehearsal`); nothing follows from either.
 *    Voices are told apart: beside a spoken answer stands whose `voice` it was in, where that was sure; what is said in
 *    the second person's name in the technician's is refused (`otherVoice`). Answers without it lead where they led.
 *    In a bay `engineHeard` names the `microphone` that heard it.
 *
 * 6. A stop takes fire, injury and "still running" before all is off; what the second person called is theirs to take back.
 *    A weep of fuel stops, and so does an oil pressure below its floor at the end of a sweep. Beside a running engine a
 *    question that nobody answers, and a hold, end in a stop. What knocks ends the start (`barred`), coolant in a cylinder
 *    leads by the bar to the starter, and whoever puts hands in has tools and starter asked for again. A stop of a
 *    restarted program says for how long it was away (`awayS`). Events of older records led elsewhere, as before the third.
 *
 * 7. A stop may name fire or injury as its `cause` wherever the stop before has got to; what the second person called so
 *    counts besides whatever cause is named. A profile may say that current shuts its engine off (`stopSolenoid`). Events of
 *    older records led elsewhere, as before the third.
 *
 * 8. A call for help that was not carried out is `notCarriedOut`, with who called, for what, and why not; nothing follows
 *    from it.
 *
 * 9. A load tester may be lacking (`noTester`): the battery's voltage at rest stands in, in a step of its own. What fires
 *    while it is cranked without fuel stops with a cause of its own. A generating set has its mode switch asked for before it
 *    is cranked, a jacket heater is off until the end, and what was locked out or inhibited is given back (`handsBack`, which
 *    a profile of an older record lacks). An answer with seconds of its own counts only while they last: what is denied at
 *    its read-back afterwards stops. Coolant that is told too hot in the warm-up stops unless it is denied in time; "not yet"
 *    at a speed of a sweep is waited for; a pause has the heater's time begin anew; coolant read before a run sets no limit
 *    of it, and is never as before; "no more codes" and "fault cleared" are held against the bus. That it fired is taken
 *    behind "nothing yet" too, with its seconds since the burst; beside "nothing yet", a clear and "ready" stands the speed
 *    by the bus, and one that runs is not cranked. Pressure that has to hold has the starter turn on. A value that stops the
 *    engine is read back whatever speaks against it; what knocked is not fired again by keys either; each stop word is proved
 *    by whose it is, and within a moment two are one but for two hands at two devices (`device`); a stop after a false alarm
 *    has a cause of its own; nobody goes back to seconds that began before; a watched code has its time from firing. What is
 *    asked of the supervisor nobody else answers, and `passed` names who said so (`by`), also where the second person said
 *    it for the technician. Beside an answer that the engine stands, and beside "correct" in a stop, stand its oil pressure
 *    and its charging voltage by the bus, and both are held against it. Fire and injury are confirmed to be over before work
 *    goes on; a cap is opened on two looks a minute apart; what cannot be judged is neither passed nor found. Who
 *    goes back behind what took a safeguard away makes it safe anew first, and nobody to before a run; a set that is locked out anew is given back anew;
 *    a stop within a drill that knows of a restart, or of what ran on, is no drill; a freeze point waits for a cool cap too;
 *    numbers are taken back only until the starter turns; pressure that is said only after a burst has not held. A code that
 *    blocks, and an idle that hunts, stop the engine; one that the bus shows running where it is taken to stand stops with a
 *    cause of its own (`runsUnasked`). "Fired" counts from the end of its burst; a watch that is come back to, or held, has no
 *    more time than it had; smoke and noise have theirs since it fired last; nobody vouches for a value of their own. What is
 *    typed may be any number that a gauge can show. Events of
 *    records of the seventh and eighth lead where they led, but for what begins with an answer's seconds: a record in which
 *    any of it happened is read and told, and neither gone on with nor confirmed. No record of the ninth was given out before
 *    all of this held.
 *
 * A new kind, or a change in what a kind or one of its members means, takes the next number; what older records hold
 * is read on as it was written.
 */
export const VOCABULARY = 9;

/** Since this one the events lead where they lead now. */
const CARRIED_OUT_SINCE = 7;

/** Since this one they do so without any exception. */
const LEADS_ALIKE_SINCE = 9;

const named = z.object({ vocabulary });

/** The vocabularies that the parts of a record were written in. */
const vocabulariesIn = (entries: readonly Pick<Entry, 'kind' | 'data'>[]): readonly number[] =>
  entries.flatMap(({ kind, data }) => {
    const parsed = isRestart(kind) || kind === 'opened' ? named.safeParse(data) : undefined;
    return parsed?.success ? [parsed.data.vocabulary] : [];
  });

/** The vocabulary of a record, or of a part of it, whose events no longer lead where they led; else null. */
export function olderVocabulary(entries: readonly Pick<Entry, 'kind' | 'data'>[]): number | null {
  const oldest = Math.min(...vocabulariesIn(entries));
  return oldest < CARRIED_OUT_SINCE ? oldest : null;
}

/** The vocabulary of a record, or of a part of it, in which some events may have led elsewhere; else null. */
export function formerVocabulary(entries: readonly Pick<Entry, 'kind' | 'data'>[]): number | null {
  const oldest = Math.min(...vocabulariesIn(entries));
  return oldest < LEADS_ALIKE_SINCE ? oldest : null;
}

/** The vocabulary of a record, where it is newer than this program; else null. */
export function newerVocabulary(entries: readonly Pick<Entry, 'kind' | 'data'>[]): number | null {
  const newest = Math.max(...vocabulariesIn(entries));
  return newest > VOCABULARY ? newest : null;
}
