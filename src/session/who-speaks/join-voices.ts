import { offerOf } from '../../../machines/moment.ts';
import type { Person, Via } from '../../../machines/vocabulary.ts';
import type { Recognizer, VoiceHeard } from '../../voice/ports.ts';
import { enoughUtterances, KnownVoices } from '../../voice/who-speaks/known-voices.ts';
import type { EventBody } from '../hearing.ts';
import type { Session } from '../session.ts';

type AtTheEngine = Exclude<Person, 'supervisor'>;

/**
 * From this certainty on a voice is put beside an answer: of the first utterance in a step, and of it and those that follow
 * together ("clear", and its "correct"), which tell more. Chosen on people (`npm run who-speaks`) by misses: a second
 * person who is refused their own "clear" loses patience with the tool.
 */
const SURE_FROM = { first: 0.9, together: 0.55 };
const TOGETHER = 3;
/** What a voice belongs to is reported right behind it; a stop comes before it, by as long as somebody goes on speaking. */
const BELONGS_WITHIN_MS = 300;
const STOP_WITHIN_MS = 4000;

const isAtTheEngine = (by: Person): by is AtTheEngine => by !== 'supervisor';

/** @returns who it was, where that is sure for so many utterances */
export const surely = <Told extends { readonly certainty: number }>(
  told: Told | null,
  utterances: number,
): Told | null =>
  told && told.certainty >= (utterances > 1 ? SURE_FROM.together : SURE_FROM.first) ? told : null;

/**
 * Learns the voices of two people at one microphone from what they are asked for by name, the emergency word first, and
 * puts beside each spoken answer whose voice it was in, where that is sure. Nothing of a voice is kept beyond the session.
 * @param practice one person may speak for both, as people do at an engine that is none: nobody is refused then
 */
export function joinVoices(
  session: Session,
  recognizer: Pick<Recognizer, 'onVoice'>,
  practice = session.parts.profile.invented,
): void {
  const known = new KnownVoices<AtTheEngine>();
  const { clock } = session.parts;
  let last: { readonly heard: VoiceHeard; readonly atMs: number } | null = null;
  /** What somebody has said in this step, the last of it. */
  let turn: { readonly of: string; readonly voices: readonly Float32Array[] } = { of: '', voices: [] };
  let drill: { readonly by: AtTheEngine; readonly atMs: number } | null = null;

  function learn(by: AtTheEngine, voice: Float32Array): void {
    if (known.learn(by, voice) === enoughUtterances)
      session.keep('voiceLearned', { by, utterances: enoughUtterances, kept: false });
  }

  recognizer.onVoice?.(heard => {
    const atMs = clock.nowMs();
    last = { heard, atMs };
    // A stop at any other moment may have been anybody's.
    if (heard.stopped && drill && atMs - drill.atMs <= STOP_WITHIN_MS) learn(drill.by, heard.voice);
    if (heard.stopped) drill = null;
  });

  session.attachVoices((body: EventBody, by: Person, via: Via): EventBody => {
    if (via !== 'voice' || !isAtTheEngine(by)) return body;
    const nowMs = clock.nowMs();
    if (body.type === 'stop') {
      drill = offerOf(session.moment).awaits === 'drill' ? { by, atMs: nowMs } : null;
      return body;
    }
    if (body.type !== 'reply' && body.type !== 'value') return body;
    const voice = last && nowMs - last.atMs <= BELONGS_WITHIN_MS ? last.heard.voice : null;
    last = null;
    if (!voice) return body;
    const of = `${by} ${session.moment.context.step}`;
    turn = { of, voices: [...(turn.of === of ? turn.voices : []), voice].slice(-TOGETHER) };
    const sure = surely(known.tell('technician', 'second', turn.voices), turn.voices.length);
    // An answer in a voice that is surely another's teaches nothing of this one's, nor is it a part of what they say next.
    if (!sure || sure.of === by) learn(by, voice);
    else turn = { of, voices: [] };
    return sure && !(practice && sure.of !== by) ? { ...body, voice: sure } : body;
  });
}
