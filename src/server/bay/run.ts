import { basename } from 'node:path';
import { languages } from '../../../prompts/index.ts';
import type { LanguageCode, ReplyId } from '../../../prompts/types.ts';
import { type Entry, entrySchema, RecordError, type RecordLog, systemCause } from '../../record/index.ts';
import type { Clock } from '../../session/clock.ts';
import { type EngineEarLink, firingOf, joinEngineEar } from '../../session/engine-ear/join-engine-ear.ts';
import type { SessionHeader } from '../../session/header.ts';
import { beginRecord, continueRecord } from '../../session/record-keeping.ts';
import type { Restored } from '../../session/resume.ts';
import { closeRecord } from '../../session/save-record.ts';
import { Session } from '../../session/session.ts';
import { Viewer } from '../../session/viewer.ts';
import { joinVoices, type VoicesLink } from '../../session/who-speaks/join-voices.ts';
import { ENTRIES_IN_A_PAGE } from '../protocol/index.ts';
import { type Mouths, RemoteSpeech } from './remote-voice.ts';

/** Makes the clock of a session that begins at this session time. */
export type MakeClock = (beginMs: number) => Clock;

/** What is told when the record of a session could not be kept where it was begun. */
export interface RecordNews {
  /** It was saved in another file; the sentence names it. */
  rescued(path: string, sentence: string, chain: string): Promise<void>;
  /** No place took it. */
  lost(sentence: string): void;
  /** It is whole, and nothing more comes: its session is over, or left for another day. */
  closed(): void;
}

/** What is heard of the engine is shown so often: it comes more often than anybody looks. */
const EAR_SHOWN_MS = 500;
const EAR_GONE_MS = 1500;

/** What ends a session without a signature. */
const END: ReplyId = 'endSession';

/** Where the record is on the laptop is nobody's business but its own. */
const notKept = ({ cause }: RecordError): string =>
  `The laptop can no longer write the record (${systemCause(cause)}): it keeps it in memory only. Make room there, and all of it is written; else the laptop saves the record elsewhere when the session is over, and says where.`;

/** One session being run in a bay, with its record. */
export class Run {
  readonly id: string;
  readonly session: Session;
  readonly viewer: Viewer;
  readonly clock: Clock;
  readonly record: RecordLog;
  readonly speech: RemoteSpeech;
  readonly engineEar: EngineEarLink;
  readonly voices: VoicesLink;
  readonly #news: RecordNews;
  /** Settles when the session is over, and its record is closed. */
  readonly over: Promise<void>;
  #closing: Promise<void> | null = null;
  #earGone: NodeJS.Timeout | undefined;

  private constructor(
    id: string,
    header: SessionHeader,
    record: RecordLog,
    clock: Clock,
    mouths: Mouths,
    news: RecordNews,
    restored?: Restored,
  ) {
    this.id = id;
    this.#news = news;
    this.clock = clock;
    this.record = record;
    this.speech = new RemoteSpeech(mouths, clock);
    this.session = new Session(
      { ...header, language: languages[header.language], clock, record, speech: this.speech, notKept },
      restored?.moment,
      restored?.leftAt,
    );
    this.viewer = new Viewer(this.session, 'keys');
    this.engineEar = this.#joinEngineEar();
    this.voices = joinVoices(this.session);
    if (restored) this.viewer.recall(restored.verdicts.map(({ data }) => data));
    // The last sentence is still being said when the record is closed.
    this.over = this.session.outcome.then(() => this.#closeRecord());
  }

  /** @throws RecordError when its record cannot be begun */
  static async start(
    { id, path }: { readonly id: string; readonly path: string },
    header: SessionHeader,
    makeClock: MakeClock,
    mouths: Mouths,
    news: RecordNews,
  ): Promise<Run> {
    const clock = makeClock(0);
    return new Run(id, header, await beginRecord(path, header, clock), clock, mouths, news);
  }

  /** @throws RecordError or ResumeError when its record cannot be gone on with */
  static async resume(
    { id, path }: { readonly id: string; readonly path: string },
    makeClock: MakeClock,
    mouths: Mouths,
    news: RecordNews,
  ): Promise<{ readonly run: Run; readonly entries: readonly Entry[] }> {
    const { record, clock, restored, entries, setAside } = await continueRecord(path, makeClock);
    const run = new Run(id, restored.header, record, clock, mouths, news, restored);
    if (setAside) run.session.report(setAside);
    return { run, entries };
  }

  /** Hash of the first entry, by which all versions of its record are known. */
  get chain(): string {
    const [first = ''] = this.record.linesFrom(0, 1);
    return entrySchema.parse(JSON.parse(first)).hash;
  }

  /** Some lines of its record, from this one on, as they were written. */
  lines(from: number): readonly string[] {
    return this.record.linesFrom(from, ENTRIES_IN_A_PAGE);
  }

  /** How its engine fires; null once it is over. */
  get firing() {
    return this.isOver ? null : firingOf(this.session.parts.profile);
  }

  get isOver(): boolean {
    return this.session.moment.status === 'done';
  }

  /** The procedure would let it be ended now: everything is off, and somebody has said so. */
  get mayBeLeft(): boolean {
    return !this.isOver && this.session.grammar('keys').replies.some(({ id }) => id === END);
  }

  get language(): LanguageCode {
    return this.session.parts.language.code;
  }

  /** Ends the run, with everything carried out that had been received; the session may be gone on with. */
  async close(): Promise<void> {
    await this.speech.close();
    await this.#closeRecord();
  }

  #joinEngineEar(): EngineEarLink {
    let shownMs = Number.NEGATIVE_INFINITY;
    const link = joinEngineEar(this.session, () => {
      clearTimeout(this.#earGone);
      // A microphone that has gone says nothing any more: its last speed is not left standing.
      this.#earGone = setTimeout(() => this.viewer.showsEngineEar(link), EAR_GONE_MS).unref();
      const nowMs = this.clock.nowMs();
      if (nowMs - shownMs < EAR_SHOWN_MS) return;
      shownMs = nowMs;
      this.viewer.showsEngineEar(link);
    });
    return link;
  }

  #closeRecord(): Promise<void> {
    this.#closing ??= (async () => {
      try {
        await this.session.settled();
        this.clock.setAlarm(null, () => {});
        clearTimeout(this.#earGone);
        await this.#keepRecord();
      } catch (error) {
        this.#couldNotClose(error);
      }
    })();
    return this.#closing;
  }

  /** Whatever else keeps it from being closed, as a lock that cannot be taken away: other bays go on, and so does this one. */
  #couldNotClose(error: unknown): void {
    this.viewer.showProblem('The laptop could not close the record; its terminal says why.');
    this.#news.lost(
      `${this.record.path} could not be closed (${systemCause(error)}): verify it before you go on with it.`,
    );
  }

  /** The faces are told the name of the file only: where it is on the laptop is nobody's business but its own. */
  async #keepRecord(): Promise<void> {
    try {
      const elsewhere = await closeRecord(this.record);
      if (elsewhere === undefined) return this.#news.closed();
      const { path } = this.record;
      this.viewer.showProblem(
        `The record could not be written to the end; the whole of it is in ${basename(path)}. The laptop's terminal says where.`,
      );
      await this.#news.rescued(path, elsewhere, this.chain);
      this.#news.closed();
    } catch (error) {
      if (!(error instanceof RecordError)) return this.#couldNotClose(error);
      this.viewer.showProblem('The laptop could save the record nowhere; its terminal says why.');
      this.#news.lost(error.message);
    }
  }
}
