import { initialTransition, transition } from 'xstate';
import type { JobCard, Said } from '../../machines/context.ts';
import type { SessionEvent } from '../../machines/events.ts';
import { buildFirstStart, type FirstStart } from '../../machines/first-start.ts';
import { controlsOf, isOver, type Moment, outcomeOf, stateName } from '../../machines/moment.ts';
import { nextAlarmMs } from '../../machines/timing.ts';
import type { Person, PromptValues, Via } from '../../machines/vocabulary.ts';
import type { Language, LineId } from '../../prompts/types.ts';
import { isQuantity, quantityUnits } from '../engineering/quantities/table.ts';
import type { Profile } from '../profile/schema.ts';
import type { RecordLog } from '../record/index.ts';
import { RecordError } from '../record/record-error.ts';
import {
  inJson,
  type Kind,
  type Note,
  type Outcome,
  type RecordKind,
  type Written,
} from '../record/vocabulary/index.ts';
import type { EarLevel, Grammar, Heard, Recognizer } from '../voice/ports.ts';
import type { SpeechQueue } from '../voice/speech-queue.ts';
import { notesIn, saidIn } from './actions.ts';
import { assumedSaid } from './assumed.ts';
import { BayWatch, type HearingReport } from './bay-watch.ts';
import type { Clock } from './clock.ts';
import { grammarOf, slotValueToSi } from './grammar.ts';
import { type EventBody, meaningOf } from './hearing.ts';
import { figureByFigure, spokenInNoise } from './in-noise.ts';
import { besideOthers, type PastStarts, unlikeOthers } from './past-starts/beside-others.ts';
import { FigureReader, mayHoldFigure } from './past-starts/figures.ts';
import type { UnitSystem } from './units.ts';
import { type Sentence, wordSaid } from './wording.ts';

export type { Outcome };

export interface SessionParts {
  readonly profile: Profile;
  readonly job: JobCard;
  readonly language: Language;
  readonly units: UnitSystem;
  readonly clock: Clock;
  readonly record: Pick<RecordLog, 'append' | 'failure' | 'watch'>;
  /** What is told for as long as entries are in memory only; where it is left out, the record's own sentence. */
  readonly notKept?: (failure: RecordError) => string;
  readonly speech: SpeechQueue;
}

/** What has happened, for faces that show it: a line said, a thing heard, a problem. */
export type Happening =
  | {
      readonly kind: 'said';
      readonly atMs: number;
      readonly shown: string;
      readonly hazard: boolean;
      /** It asks something. */
      readonly asks: boolean;
      /** What of it answers, refuses, judges or tells, beside what is asked. */
      readonly inPassing: string;
    }
  | {
      readonly kind: 'heard';
      readonly atMs: number;
      readonly by: Person;
      readonly text: string;
      readonly counted: boolean;
    }
  | { readonly kind: 'noted'; readonly atMs: number; readonly note: Note }
  | { readonly kind: 'problem'; readonly sentence: string }
  /** What is to be shown for as long as entries are in memory only; null: all of them are on the disk again. */
  | { readonly kind: 'notKept'; readonly sentence: string | null };

interface Ear {
  readonly recognizer: Recognizer;
  readonly via: Via;
}

/**
 * Runs the start-up machine with its ports. Everything that happens meets in one queue, and is on the disk before
 * anything is said about it; a stop waits neither in the queue nor for the disk.
 */
export class Session {
  readonly #parts: SessionParts;
  readonly #machine: FirstStart;
  readonly #isResumed: boolean;
  #moment: Moment;
  #queue: SessionEvent[] = [];
  readonly #stops: SessionEvent[] = [];
  #draining: Promise<void> | null = null;
  #taking = false;
  readonly #ears: Ear[] = [];
  #speaking = false;
  #withSight = (body: EventBody): EventBody => body;
  #withEar = (body: EventBody): EventBody => body;
  readonly #figures: FigureReader;
  #pastStarts: PastStarts = {};
  /** What is unlike the shop's earlier starts, until there is time to say so. */
  #unlike: Said[] = [];
  #withVoice = (body: EventBody, _by: Person, _via: Via): EventBody => body;
  readonly #bay = new BayWatch(report => this.#tellOfHearing(report));
  readonly #watchers = new Set<(happening: Happening | null) => void>();
  #settleOutcome: (outcome: Outcome) => void = () => {};
  /** Settles when the session is signed off or ended, and its record says so. */
  readonly outcome: Promise<Outcome>;

  readonly #leftAt: string | undefined;

  /**
   * @param restored the moment at which an interrupted session broke off
   * @param leftAt when its record was last written to, UTC
   */
  constructor(parts: SessionParts, restored?: Moment, leftAt?: string) {
    this.#leftAt = leftAt;
    this.#parts = parts;
    this.#machine = buildFirstStart(parts.profile);
    this.#figures = new FigureReader(parts.profile);
    this.#isResumed = restored !== undefined;
    this.#moment =
      restored ?? initialTransition(this.#machine, { profile: parts.profile, job: parts.job })[0];
    this.outcome = new Promise(resolve => {
      this.#settleOutcome = resolve;
    });
    parts.record.watch(() => this.#lookAtDisk());
    parts.speech.onSpeaking(sentence => {
      this.#speaking = sentence !== undefined;
      // Keys are never deafened by the tool's own voice.
      this.#setOnlyStop();
      this.#tell(null);
    });
  }

  get moment(): Moment {
    return this.#moment;
  }

  get parts(): SessionParts {
    return this.#parts;
  }

  get speaking(): boolean {
    return this.#speaking;
  }

  /** Lets something listen for this session; any number of ears may. */
  attach(recognizer: Recognizer, via: Via): void {
    this.#ears.push({ recognizer, via });
    recognizer.onHeard(heard => this.hear(heard, via));
    this.#setOnlyStop();
    recognizer.listen(this.grammar(via));
  }

  /** Puts beside each answer what a vehicle bus shows at that moment. */
  attachBus(withSight: (body: EventBody) => EventBody): void {
    this.#withSight = withSight;
  }

  /** Puts beside each answer what the microphone hears of the engine at that moment. */
  attachEngineEar(withEar: (body: EventBody) => EventBody): void {
    this.#withEar = withEar;
  }

  /** Holds what this start measures from now on beside the shop's earlier ones: it is told, and nothing follows from it. */
  holdBeside(pastStarts: PastStarts): void {
    this.#pastStarts = pastStarts;
  }

  /** Puts beside each spoken answer whose voice it was in. */
  attachVoices(withVoice: (body: EventBody, by: Person, via: Via) => EventBody): void {
    this.#withVoice = withVoice;
  }

  /** What an ear measures: the session watches over voice and noise, and says when voice cannot be trusted. */
  level(level: EarLevel): void {
    this.#bay.take(level, this.#speaking);
  }

  /** While the tool speaks, and where voice cannot be trusted, only stop words are heard. */
  get hearsOnlyStop(): boolean {
    return this.#speaking || !this.#bay.voiceTrusted;
  }

  /** Whether the bay is so loud that figures are said one by one, and of the wordings those that are farthest apart. */
  get inNoise(): boolean {
    return this.#bay.voiceHelped;
  }

  /** The language, with what is asked for in a loud bay first while it is loud. */
  get language(): Language {
    return this.inNoise ? spokenInNoise(this.#parts.language) : this.#parts.language;
  }

  /** Everything that may be said now on this way. */
  grammar(via: Via): Grammar {
    const grammar = grammarOf(this.#moment, this.language, this.#parts.units, via);
    return this.inNoise && via === 'voice' ? figureByFigure(grammar) : grammar;
  }

  #setOnlyStop(): void {
    for (const { recognizer, via } of this.#ears)
      if (via === 'voice') recognizer.onlyStop(this.hearsOnlyStop);
  }

  #tellOfHearing({ finding, noiseDbfs, aboveNoiseDb }: HearingReport): void {
    this.keep('hearing', { finding, noiseDbfs, aboveNoiseDb });
    if (finding === 'bayChecked') return;
    this.#setOnlyStop();
    this.#listen();
    // Where seconds count the tool's own voice would be in the way of the reply.
    if (controlsOf(this.#moment).includes('hold')) this.mention(finding);
    else this.#tell({ kind: 'problem', sentence: this.#parts.language.lines[finding] });
  }

  /** Called with each happening, and with null when something else changed that a face may show. */
  watch(watcher: (happening: Happening | null) => void): () => void {
    this.#watchers.add(watcher);
    return () => this.#watchers.delete(watcher);
  }

  /** Speaks the first prompt; a resumed session first asks what the engine is doing. */
  async begin(): Promise<void> {
    // One that was gone on with on a full disk is in memory only from the first.
    if (this.#parts.record.failure) this.#lookAtDisk();
    if (this.#isResumed) {
      this.#announce([{ line: 'resumed', step: this.#moment.context.step, values: {}, priority: 'notice' }]);
      this.receive({ type: 'stop', cause: 'toolRestarted', ...this.#away() }, 'technician', 'tool');
    } else {
      const [moment, actions] = initialTransition(this.#machine, {
        profile: this.#parts.profile,
        job: this.#parts.job,
      });
      this.#moment = moment;
      const welcome: Said = {
        line: 'welcome',
        step: moment.context.step,
        values: { profile: this.#parts.profile.name },
        priority: 'prompt',
      };
      const invented: Said[] = this.#parts.profile.invented ? [{ ...welcome, line: 'inventedProfile' }] : [];
      // Two sentences: the short one is heard while the other is still being made.
      this.#announce([welcome, ...invented, ...assumedSaid(this.#parts.profile, welcome)]);
      this.#announce(saidIn(actions));
      this.#settleIn();
    }
    await this.settled();
  }

  /** How long nobody was there, by the wall clock; unknown where that was set back meanwhile. */
  #away(): { readonly awayS?: number } {
    const awayS = (this.#parts.clock.wall().getTime() - Date.parse(this.#leftAt ?? '')) / 1000;
    return awayS >= 0 ? { awayS } : {};
  }

  /** Puts an event in the queue; a stop counts when this returns. The moment of the call is the moment of the event. */
  receive(body: EventBody, by: Person, via: Via): void {
    const seen = this.#withVoice(this.#withEar(this.#withSight(body)), by, via);
    const event = { ...seen, by, via, atMs: this.#parts.clock.nowMs() };
    if (event.type === 'stop') {
      this.#stops.push(event);
      this.#takeStops();
      return;
    }
    this.#queue.push(event);
    this.#draining ??= this.#drain().finally(() => {
      this.#draining = null;
    });
  }

  /** Says something that no step says, in passing. */
  mention(line: LineId, values: PromptValues = {}): void {
    this.#announce([{ line, values, step: this.#moment.context.step, priority: 'notice' }]);
  }

  /** Calls something out ahead of everything else, for people to look at: nothing follows from it by itself. */
  callOut(line: LineId, values: PromptValues = {}): void {
    this.#callOut([{ line, values, step: this.#moment.context.step, priority: 'hazard' }]);
  }

  /** A sentence for the people at the engine about something that does not work. */
  report(sentence: string): void {
    this.#tell({ kind: 'problem', sentence });
    this.keep('problem', { sentence });
  }

  /** Settles when everything received so far has been carried out and is on the disk. */
  async settled(): Promise<void> {
    while (this.#draining) await this.#draining;
    await this.#finished;
    await this.#kept;
  }

  /**
   * Takes what an ear heard, for what it means now.
   * @param speaker who it was, where the ear knows: a device of one person's own
   */
  hear(heard: Heard, via: Via, speaker?: Person): void {
    const meaning = meaningOf(heard, this.#moment, via, this.#parts, speaker);
    this.keep('heard', {
      via,
      text: heard.text,
      kind: heard.kind,
      ...('confidence' in heard ? { confidence: heard.confidence } : {}),
      ...(heard.kind === 'unclear' ? { reason: heard.reason } : {}),
      by: meaning.by,
    });
    this.#tell({
      kind: 'heard',
      atMs: this.#parts.clock.nowMs(),
      by: meaning.by,
      text: heard.text,
      counted: heard.kind !== 'unclear',
    });
    if (heard.kind === 'unclear' && heard.reason === 'outOfRange') this.#tellRange(via);
    if (meaning.body) this.receive(meaning.body, meaning.by, via);
  }

  /** A number that no gauge here shows is told what it may be. */
  #tellRange(via: Via): void {
    const { number } = this.grammar(via);
    if (!number || !isQuantity(number.id)) return;
    const { id: quantity, min, max } = number;
    const si = (value: number) => slotValueToSi(quantity, value, this.#parts.units);
    this.mention('outOfRange', {
      name: { quantityName: quantity },
      limits: { limits: { unit: quantityUnits[quantity], of: quantity, min: si(min), max: si(max) } },
    });
  }

  async #drain(): Promise<void> {
    for (;;) {
      const event = this.#queue.shift();
      if (!event || isOver(this.#moment)) return;
      const lines = this.#take(event);
      const { moment } = this;
      this.#takeStops();
      await this.#finish(moment, lines);
    }
  }

  /** Stops come between two events, never within one: what an event led to stands behind it on the record. */
  #takeStops(): void {
    if (this.#taking) return;
    for (let stop = this.#stops.shift(); stop; stop = this.#stops.shift()) {
      if (isOver(this.#moment)) continue;
      // What waits was said before the stop: it is no answer to what is asked after it.
      this.#queue = [];
      const lines = this.#take(stop);
      this.#finished = Promise.all([this.#finished, this.#finish(this.#moment, lines)]).then(() => {});
    }
  }

  /** Carries an event out and calls out what cannot wait; gives back what is said once it is on the disk. */
  #take(event: SessionEvent): readonly Said[] {
    this.#taking = true;
    try {
      return this.#carryOut(event);
    } finally {
      this.#taking = false;
    }
  }

  #carryOut(event: SessionEvent): readonly Said[] {
    const before = this.#moment;
    const [moment, actions] = transition(this.#machine, before, event);
    this.#moment = moment;
    const changed =
      actions.length > 0 || moment.context !== before.context || stateName(moment) !== stateName(before);
    if (changed) this.keep('event', { ...event, state: stateName(moment) });
    for (const note of notesIn(actions)) {
      this.keep(note.kind, note.data);
      this.#tell({ kind: 'noted', atMs: event.atMs, note });
      this.#compare(note, event.atMs);
    }
    // What somebody has answered or overruled need not be said to its end.
    if (event.type !== 'clock' && event.type !== 'unclear') this.#parts.speech.clear();
    if (isOver(moment)) this.keep('closed', { outcome: outcomeOf(moment) });
    // A call-out does not wait for the disk; everything else does.
    const lines = saidIn(actions);
    this.#callOut(lines.filter(isHazard));
    return [...this.#dueUnlike(event), ...lines.filter(line => !isHazard(line))];
  }

  /** Where a figure of this start stands among the shop's earlier ones. */
  #compare(note: Note, atMs: number): void {
    if (!mayHoldFigure(note)) return;
    const figure = this.#figures.take(note, atMs);
    const standing = figure && besideOthers(figure, this.#pastStarts);
    if (!figure || !standing) return;
    this.keep('besideOthers', standing);
    this.#unlike.push(...unlikeOthers(figure.figure, figure.value, standing));
  }

  /** Before what is asked next; where seconds count it waits, and a stop leaves it to the report. */
  #dueUnlike({ type }: SessionEvent): readonly Said[] {
    if (type === 'stop') this.#unlike = [];
    return controlsOf(this.#moment).includes('hold') ? this.#unlike.splice(0) : [];
  }

  async #finish(moment: Moment, lines: readonly Said[]): Promise<void> {
    await this.#kept;
    // A stop came meanwhile: nothing is asked or explained any more that was so before it.
    if (this.#moment !== moment) return;
    this.#announce(lines);
    this.#settleIn();
    if (isOver(moment)) this.#settleOutcome(outcomeOf(moment));
  }

  /** After each change: listen for what may be said now, and look at the clock when it is next needed. */
  #settleIn(): void {
    this.#listen();
    const alarmMs = isOver(this.#moment) ? null : nextAlarmMs(this.#moment.context);
    this.#parts.clock.setAlarm(alarmMs, () => this.receive({ type: 'clock' }, 'technician', 'tool'));
    this.#tell(null);
  }

  #listen(): void {
    for (const { recognizer, via } of this.#ears) recognizer.listen(this.grammar(via));
  }

  /** Hazards each for themselves, ahead of everything else. */
  #callOut(hazards: readonly Said[]): void {
    for (const said of hazards) this.#speak(this.#word(said), said, 'hazard');
  }

  /** What is said at one moment is one sentence, in its order. */
  #announce(lines: readonly Said[]): void {
    const last = lines.at(-1);
    if (!last) return;
    const worded = lines.map(said => this.#word(said));
    const join = (part: keyof Sentence) => worded.flatMap(line => line[part] || []).join(' ');
    const priority = lines.some(line => line.priority === 'prompt') ? 'prompt' : 'notice';
    const asked = lines.findLastIndex(line => line.priority === 'prompt');
    // What comes before a question, as what has to be known for it, is shown beside it.
    const inPassing = worded.filter((_, index) => index !== asked);
    this.#speak(
      { spoken: join('spoken'), shown: join('shown') },
      last,
      priority,
      inPassing.map(({ shown }) => shown).join(' '),
    );
  }

  #word(said: Said): Sentence {
    return wordSaid(said, this.language, this.#parts.units);
  }

  #speak({ spoken, shown }: Sentence, said: Said, priority: Said['priority'], inPassing = ''): void {
    if (spoken !== '') this.keep('said', { text: spoken, line: said.line, step: said.step, priority });
    this.#tell({
      kind: 'said',
      atMs: this.#parts.clock.nowMs(),
      shown,
      hazard: priority === 'hazard',
      asks: priority === 'prompt',
      inPassing,
    });
    if (spoken === '') return;
    const label = `${said.step}-${said.line}`;
    const once = said.once ? { once: said.once } : {};
    void this.#parts.speech.enqueue({ text: spoken, priority, label, ...once }).then(outcome => {
      if (outcome.kind === 'failed') this.#tell({ kind: 'problem', sentence: outcome.reason });
    });
  }

  #finished: Promise<void> = Promise.resolve();
  #kept: Promise<void> = Promise.resolve();

  /** The record tells of both as well: of its beginning, when it can. */
  #lookAtDisk(): void {
    const { record, notKept } = this.#parts;
    const { failure } = record;
    const sentence = failure ? (notKept?.(failure) ?? failure.message) : null;
    this.#tell({ kind: 'notKept', sentence });
    if (sentence === null) this.report(KEPT_AGAIN);
    else this.keep('problem', { sentence });
  }

  /** Puts one fact on the record. Where the disk fails the session goes on, with the record in memory. */
  keep<K extends Exclude<Kind, RecordKind>>(kind: K, data: Written<K>): void {
    const written = this.#parts.record.append(kind, inJson(data)).then(
      () => {},
      (error: unknown) => {
        // Told already, as long as it lasts.
        if (error instanceof RecordError && error.code === 'disk') return;
        const sentence = error instanceof RecordError ? error.message : String(error);
        this.#tell({ kind: 'problem', sentence });
      },
    );
    this.#kept = Promise.all([this.#kept, written]).then(() => {});
  }

  #tell(happening: Happening | null): void {
    for (const watcher of this.#watchers) watcher(happening);
  }
}

const KEPT_AGAIN = 'The record can be written again: every entry of it is on the disk, in its order.';

const isHazard = (said: Said) => said.priority === 'hazard';
