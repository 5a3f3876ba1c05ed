import { offerOf } from '../../../machines/moment.ts';
import type { Person, Via } from '../../../machines/vocabulary.ts';
import type { VoiceHeard } from '../../voice/ports.ts';
import { enoughUtterances, KnownVoices } from '../../voice/who-speaks/known-voices.ts';
import type { EventBody } from '../hearing.ts';
import type { Session } from '../session.ts';

type AtTheEngine = Exclude<Person, 'supervisor'>;

/** Where voices are handed in as they are heard. */
export interface VoicesLink {
  /**
   * Takes whose voice something was said in: right before what was said, or behind a stop that was said in it.
   * @param heard null where what is said next was in no voice that could be told
   * @param microphone which one heard it, where there are several
   */
  hears(heard: VoiceHeard | null, microphone?: string): void;
}

/** What one microphone has heard. */
interface AtMicrophone {
  readonly known: KnownVoices<AtTheEngine>;
  /** What somebody has said in this step, the last of it. */
  turn: { readonly of: string; readonly voices: readonly Float32Array[] };
}

/**
 * From this certainty on a voice is put beside an answer: of the first utterance in a step, and of it and those that follow
 * together ("clear", and its "correct"), which tell more. Chosen on people (`npm run who-speaks`) by misses: a second
 * person who is refused their own "clear" loses patience with the tool.
 */
const SURE_FROM = { first: 0.9, together: 0.55 };
const TOGETHER = 3;
/** What was heard is reported right behind the voice that it was in, ms. */
export const BELONGS_WITHIN_MS = 300;
/** A stop comes before its voice, by as long as somebody goes on speaking. */
const STOP_WITHIN_MS = 4000;
const ONLY = '';

const isAtTheEngine = (by: Person): by is AtTheEngine => by !== 'supervisor';

/** @returns who it was, where that is sure for so many utterances */
export const surely = <Told extends { readonly certainty: number }>(
  told: Told | null,
  utterances: number,
): Told | null =>
  told && told.certainty >= (utterances > 1 ? SURE_FROM.together : SURE_FROM.first) ? told : null;

/**
 * Learns the voices of two people at one microphone from what they are asked for by name, the emergency word first, and
 * puts beside each spoken answer whose voice it was in, where that is sure. What one microphone has heard is never held
 * against what another one hears: a voice is not the same through both. Nothing of a voice is kept beyond the session.
 * @param practice one person may speak for both, as people do at an engine that is none: nobody is refused then
 */
export function joinVoices(session: Session, practice = session.parts.profile.invented): VoicesLink {
  const { clock } = session.parts;
  const microphones = new Map<string, AtMicrophone>();
  const told = new Set<AtTheEngine>();
  let last: { readonly voice: Float32Array; readonly at: AtMicrophone; readonly atMs: number } | null = null;
  let drill: { readonly by: AtTheEngine; readonly atMs: number } | null = null;

  function learn(by: AtTheEngine, voice: Float32Array, { known }: AtMicrophone): void {
    if (known.learn(by, voice) !== enoughUtterances || told.has(by)) return;
    told.add(by);
    session.keep('voiceLearned', { by, utterances: enoughUtterances, kept: false });
  }

  function at(microphone: string): AtMicrophone {
    const found = microphones.get(microphone) ?? { known: new KnownVoices(), turn: { of: '', voices: [] } };
    microphones.set(microphone, found);
    return found;
  }

  session.attachVoices((body: EventBody, by: Person, via: Via): EventBody => {
    if (via !== 'voice' || !isAtTheEngine(by)) return body;
    const nowMs = clock.nowMs();
    if (body.type === 'stop') {
      drill = offerOf(session.moment).awaits === 'drill' ? { by, atMs: nowMs } : null;
      return body;
    }
    if (body.type !== 'reply' && body.type !== 'value') return body;
    const heard = last && nowMs - last.atMs <= BELONGS_WITHIN_MS ? last : null;
    last = null;
    if (!heard) return body;
    const { voice, at: microphone } = heard;
    const { known, turn } = microphone;
    const of = `${by} ${session.moment.context.step}`;
    const voices = [...(turn.of === of ? turn.voices : []), voice].slice(-TOGETHER);
    microphone.turn = { of, voices };
    const sure = surely(known.tell('technician', 'second', voices), voices.length);
    // An answer in a voice that is surely another's teaches nothing of this one's, nor is it a part of what they say next.
    if (!sure || sure.of === by) learn(by, voice, microphone);
    else microphone.turn = { of, voices: [] };
    return sure && !(practice && sure.of !== by) ? { ...body, voice: sure } : body;
  });

  return {
    hears(heard, microphone = ONLY) {
      if (!heard) {
        last = null;
        return;
      }
      const { voice, stopped } = heard;
      const atMs = clock.nowMs();
      const where = at(microphone);
      last = stopped ? null : { voice, at: where, atMs };
      // A stop at any other moment may have been anybody's.
      if (stopped && drill && atMs - drill.atMs <= STOP_WITHIN_MS) learn(drill.by, voice, where);
      if (stopped) drill = null;
    },
  };
}
