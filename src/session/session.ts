import { initialTransition, transition } from 'xstate';
import type { Said } from '../../machines/context.ts';
import { isEmergency } from '../../machines/emergency.ts';
import type { SessionEvent } from '../../machines/events.ts';
import { buildFirstStart, type FirstStart } from '../../machines/first-start.ts';
import { controlsOf, isOver, type Moment, outcomeOf, stateName } from '../../machines/moment.ts';
import { nextAlarmMs } from '../../machines/timing.ts';
import type { Emergency, Person, PromptValues, Via } from '../../machines/vocabulary.ts';
import type { Language, LineId } from '../../prompts/types.ts';
import type { Kind, Outcome, RecordKind, Written } from '../record/vocabulary/index.ts';
import type { EarLevel, Grammar, Heard, Recognizer } from '../voice/ports.ts';
import { type Action, notesIn, saidIn } from './actions.ts';
import { Announcer } from './announcer.ts';
import type { HearingReport } from './bay-watch.ts';
import { callsIn } from './calls-for-help.ts';
import { Ears } from './ears.ts';
import { EventQueue } from './event-queue.ts';
import { FarHint } from './far-hint.ts';
import type { Happening, Tell } from './happening.ts';
import { type EventBody, meaningOf } from './hearing.ts';
import { awaySince, welcomeSaid } from './opening.ts';
import { OwnVoice } from './own-voice.ts';
import type { SessionParts } from './parts.ts';
import type { PastStarts } from './past-starts/beside-others.ts';
import { Comparison } from './past-starts/comparison.ts';
import { rangeTold } from './range-told.ts';
import { RecordWriter } from './record-writer.ts';
import { meantUnasked } from './unasked.ts';

export type { Happening, Outcome, SessionParts };

/**
 * Runs the start-up machine with its ports. Everything that happens meets in one queue, and is on the disk before
 * anything is said about it; a stop waits neither in the queue nor for the disk.
 */
export class Session {
  readonly #parts: SessionParts;
  readonly #machine: FirstStart;
  readonly #isResumed: boolean;
  readonly #leftAt: string | undefined;
  #moment: Moment;
  /** The state that was asked about and listened for last: a reply that comes in another has not been asked for. */
  #asked: string;
  #hasTaken = false;
  #isFailing = false;
  #stops = 0;
  readonly #queue: EventQueue;
  readonly #record: RecordWriter;
  readonly #announcer: Announcer;
  readonly #ears: Ears;
  readonly #comparison: Comparison;
  readonly #ownVoice: OwnVoice;
  readonly #farHint = new FarHint();
  #withSight = (body: EventBody): EventBody => body;
  #withEar = (body: EventBody): EventBody => body;
  #withVoice = (body: EventBody, _by: Person, _via: Via): EventBody => body;
  readonly #watchers = new Set<Tell>();
  #settleOutcome: (outcome: Outcome) => void = () => {};
  /** Settles when the session is signed off or ended, and its record says so. */
  readonly outcome: Promise<Outcome>;

  /**
   * @param restored the moment at which an interrupted session broke off
   * @param leftAt when its record was last written to, UTC
   */
  constructor(parts: SessionParts, restored?: Moment, leftAt?: string) {
    this.#leftAt = leftAt;
    this.#parts = parts;
    this.#machine = buildFirstStart(parts.profile);
    this.#isResumed = restored !== undefined;
    this.#moment =
      restored ?? initialTransition(this.#machine, { profile: parts.profile, job: parts.job })[0];
    this.#asked = stateName(this.#moment);
    this.outcome = new Promise(resolve => {
      this.#settleOutcome = resolve;
    });
    const tell: Tell = happening => this.#tell(happening);
    this.#queue = new EventQueue({
      isOver: () => isOver(this.#moment),
      take: event => this.#take(event),
      failed: error => this.fails(error),
    });
    this.#record = new RecordWriter(parts, tell);
    this.#ears = new Ears(
      parts,
      () => this.#moment,
      report => this.#tellOfHearing(report),
    );
    this.#announcer = new Announcer(parts, () => this.language, this.#record, tell);
    this.#comparison = new Comparison(parts.profile);
    this.#ownVoice = new OwnVoice(() => parts.clock.nowMs());
    parts.speech.onSpeaking(sentence => {
      // The ears first: what they still hold was called before it spoke, and is none of its own voice.
      this.#ears.toolSpeaks = sentence !== undefined;
      this.#ownVoice.speaks(sentence?.text);
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
    return this.#ears.toolSpeaks;
  }

  /** Lets something listen for this session; any number of ears may. */
  attach(recognizer: Recognizer, via: Via): void {
    this.#ears.attach(recognizer, via, heard => this.hear(heard, via));
  }

  /** Puts beside each answer what a vehicle bus shows at that moment. */
  attachBus(withSight: (body: EventBody) => EventBody): void {
    this.#withSight = withSight;
  }

  /** Puts beside each answer what the microphone hears of the engine at that moment. */
  attachEngineEar(withEar: (body: EventBody) => EventBody): void {
    this.#withEar = withEar;
  }

  /** Puts beside each spoken answer whose voice it was in. */
  attachVoices(withVoice: (body: EventBody, by: Person, via: Via) => EventBody): void {
    this.#withVoice = withVoice;
  }

  /** Holds what this start measures from now on beside the shop's earlier ones: it is told, and nothing follows from it. */
  holdBeside(pastStarts: PastStarts): void {
    this.#comparison.holdBeside(pastStarts);
  }

  /** What an ear measures: the session watches over voice and noise, and says when voice cannot be trusted. */
  level(level: EarLevel): void {
    this.#ears.level(level);
  }

  /** While the tool speaks or is about to, and where voice cannot be trusted, only stop words are heard. */
  get hearsOnlyStop(): boolean {
    return this.#ears.hearsOnlyStop || stateName(this.#moment) !== this.#asked;
  }

  /** Whether the bay is so loud that figures are said one by one, and of the wordings those that are farthest apart. */
  get inNoise(): boolean {
    return this.#ears.inNoise;
  }

  /** The language, with what is asked for in a loud bay first while it is loud. */
  get language(): Language {
    return this.#ears.language;
  }

  /** Everything that may be said now on this way. */
  grammar(via: Via): Grammar {
    return this.#ears.grammar(via);
  }

  /** Called with each happening, and with null when something else changed that a face may show. */
  watch(watcher: Tell): () => void {
    this.#watchers.add(watcher);
    return () => this.#watchers.delete(watcher);
  }

  /** Speaks the first prompt; a resumed session first asks what the engine is doing. */
  async begin(): Promise<void> {
    this.#record.begin();
    if (this.#isResumed) this.#goOn();
    else this.#beginAnew();
    await this.settled();
  }

  #goOn(): void {
    this.mention('resumed');
    const away = awaySince(this.#leftAt, this.#parts.clock.wall());
    this.receive({ type: 'stop', cause: 'toolRestarted', ...away }, 'technician', 'tool');
  }

  #beginAnew(): void {
    // Somebody was quicker: what they did stands, and nothing is asked that was so before it.
    if (this.#hasTaken) return;
    const { profile, job } = this.#parts;
    const [moment, actions] = initialTransition(this.#machine, { profile, job });
    this.#moment = moment;
    // Two sentences: the short one is heard while the other is still being made.
    this.#announcer.announce(welcomeSaid(profile, moment.context.step));
    this.#announcer.announce(saidIn(actions));
    this.#settleIn();
  }

  /** Puts an event in the queue; a stop counts when this returns. The moment of the call is the moment of the event. */
  receive(body: EventBody, by: Person, via: Via): void {
    this.#queue.put(this.#stamped(body, by, via));
  }

  #stamped(body: EventBody, by: Person, via: Via): SessionEvent {
    const seen = this.#withVoice(this.#withEar(this.#withSight(body)), by, via);
    return { ...seen, by, via, atMs: this.#parts.clock.nowMs() };
  }

  /** Says something that no step says, in passing. */
  mention(line: LineId, values: PromptValues = {}): void {
    this.#announcer.announce([{ line, values, step: this.#moment.context.step, priority: 'notice' }]);
  }

  /** Calls something out ahead of everything else, for people to look at: nothing follows from it by itself. */
  callOut(line: LineId, values: PromptValues = {}): void {
    this.#announcer.callOut([{ line, values, step: this.#moment.context.step, priority: 'hazard' }]);
  }

  /** A sentence for the people at the engine about something that does not work. */
  report(sentence: string): void {
    this.#record.report(sentence);
  }

  /** Something broke that this session hangs on: it is stopped, and told why; nothing is thrown. */
  fails(error: unknown): void {
    // A stop that breaks as well is not tried again by itself.
    if (this.#isFailing || isOver(this.#moment)) return;
    this.#isFailing = true;
    for (const act of [
      () => this.#moment.matches('stopped') || this.receive({ type: 'stop' }, 'technician', 'tool'),
      () => this.report(`The tool failed (${String(error)}): the session was stopped. Key off.`),
    ])
      try {
        act();
      } catch {
        // Whatever still works of it is carried out.
      }
    this.#isFailing = false;
  }

  /** Puts one fact on the record. Where the disk fails the session goes on, with the record in memory. */
  keep<K extends Exclude<Kind, RecordKind>>(kind: K, data: Written<K>): void {
    this.#record.keep(kind, data);
  }

  /** Settles when everything received so far has been carried out and is on the disk. */
  async settled(): Promise<void> {
    await this.#queue.settled();
    await this.#record.kept;
  }

  /**
   * Takes what an ear heard, for what it means now; nothing once the session is over.
   * @param speaker who it was, where the ear knows: a device of one person's own
   */
  hear(heard: Heard, via: Via, speaker?: Person): void {
    if (isOver(this.#moment)) return;
    const called = heard.kind === 'stop' ? heard.calls : undefined;
    const itself = via === 'voice' && isEmergency(called) && this.saysItself(called);
    const { body: meant, by } = meaningOf(heard, this.#moment, via, this.#parts, speaker);
    // By hand people answer what they are shown; by voice, what has been said.
    const asked = via === 'voice' ? this.#asked : stateName(this.#moment);
    const isAsked = () => stateName(this.#moment) === asked;
    const body = meant === null || isAsked() ? meant : meantUnasked(meant, this.#moment);
    const reason = itself ? 'toolSpoke' : meant && !body ? 'notYetAsked' : undefined;
    this.keep('heard', {
      via,
      text: heard.text,
      kind: heard.kind,
      ...('confidence' in heard ? { confidence: heard.confidence } : {}),
      ...(heard.kind === 'unclear' ? { reason: heard.reason } : {}),
      ...(reason ? { reason } : {}),
      by,
    });
    if (itself) return;
    const counted = heard.kind !== 'unclear' && reason === undefined;
    this.#tell({ kind: 'heard', atMs: this.#parts.clock.nowMs(), by, text: heard.text, counted });
    if (reason) return;
    if (heard.kind === 'unclear' && heard.reason === 'outOfRange') this.#tellRange(via);
    if (heard.kind === 'unclear' && heard.reason === 'farAway') this.#tellToComeNearer();
    if (!body) return;
    const counts = () => isAsked() || meantUnasked(body, this.#moment) !== null;
    this.#queue.put(this.#stamped(body, by, via), counts);
  }

  /** Whether the tool says this just now, or has just said it: what is heard of it may be its own voice. */
  saysItself(cause: Emergency): boolean {
    return this.#ownVoice.has(text => callsIn(cause, text, this.#parts.language));
  }

  /** A number that no gauge here shows is told what it may be. */
  #tellRange(via: Via): void {
    const range = rangeTold(this.grammar(via).number, this.#parts.units);
    if (range) this.mention('outOfRange', range);
  }

  /** Where seconds count the tool's own voice would be in the way of the reply: then it is only shown. */
  #tellToComeNearer(): void {
    const moment = this.#moment;
    if (moment.hasTag('critical')) return;
    if (this.#farHint.isDue(stateName(moment), this.#parts.clock.nowMs())) this.mention('heardFar');
  }

  #tellOfHearing({ finding, noiseDbfs, aboveNoiseDb }: HearingReport): void {
    this.keep('hearing', { finding, noiseDbfs, aboveNoiseDb });
    if (finding === 'bayChecked') return;
    this.#ears.adjust();
    // Where seconds count the tool's own voice would be in the way of the reply.
    if (controlsOf(this.#moment).includes('hold')) this.mention(finding);
    else this.#tell({ kind: 'problem', sentence: this.#parts.language.lines[finding] });
  }

  /** Carries an event out and calls out what cannot wait; gives back what is done once it is on the disk. */
  #take(event: SessionEvent): () => Promise<void> {
    const before = this.#moment;
    const [moment, actions] = transition(this.#machine, before, event);
    this.#moment = moment;
    if (event.type === 'stop') this.#stops += 1;
    if (isNews(before, moment, actions)) {
      this.#hasTaken = true;
      this.keep('event', { ...event, state: stateName(moment) });
    }
    for (const note of notesIn(actions)) {
      this.keep(note.kind, note.data);
      this.#tell({ kind: 'noted', atMs: event.atMs, note });
      const standing = this.#comparison.take(note, event.atMs);
      if (standing) this.keep('besideOthers', standing);
    }
    // What somebody has answered or overruled need not be said to its end.
    if (event.type !== 'clock' && event.type !== 'unclear') this.#parts.speech.clear();
    if (isOver(moment)) this.keep('closed', { outcome: outcomeOf(moment) });
    // A call-out does not wait for the disk; everything else does.
    const lines = saidIn(actions);
    this.#announcer.callOut(lines.filter(isHazard));
    const later = [...this.#comparison.due(event, moment), ...lines.filter(line => !isHazard(line))];
    const stops = this.#stops;
    const isLeftBehind = () => this.#stops !== stops || stateName(this.#moment) !== stateName(moment);
    return () => this.#finish(later, isLeftBehind);
  }

  /** @param isLeftBehind a stop came meanwhile, or time went on: what was asked before that is asked no more */
  async #finish(lines: readonly Said[], isLeftBehind: () => boolean): Promise<void> {
    await this.#record.kept;
    if (isLeftBehind()) return;
    try {
      this.#announcer.announce(lines);
    } finally {
      this.#settleIn();
    }
    if (!isOver(this.#moment)) return;
    this.#record.end();
    this.#settleOutcome(outcomeOf(this.#moment));
  }

  /**
   * After each change: listen for what may be said now, and look at the clock when it is next needed. Until then the alarm
   * from before goes on.
   */
  #settleIn(): void {
    this.#asked = stateName(this.#moment);
    this.#ears.listen();
    const alarmMs = isOver(this.#moment) ? null : nextAlarmMs(this.#moment.context);
    this.#parts.clock.setAlarm(alarmMs, () => this.receive({ type: 'clock' }, 'technician', 'tool'));
    this.#tell(null);
  }

  /** Every watcher is told; one that breaks is a failure of its own. */
  #tell(happening: Happening | null): void {
    for (const watcher of this.#watchers)
      try {
        watcher(happening);
      } catch (error) {
        this.fails(error);
      }
  }
}

const isHazard = (said: Said) => said.priority === 'hazard';

/** Whether an event has done anything: only then does it stand on the record. */
const isNews = (before: Moment, after: Moment, actions: readonly Action[]): boolean =>
  actions.length > 0 || after.context !== before.context || stateName(after) !== stateName(before);
