import { copyFile, readFile, writeFile } from 'node:fs/promises';
import { uniform } from '../../../audio-fixtures/random.ts';
import { offerOf } from '../../../machines/moment.ts';
import type { Person } from '../../../machines/vocabulary.ts';
import type { LanguageCode } from '../../../prompts/types.ts';
import { readLog } from '../../../src/record/index.ts';
import { grammarOf } from '../../../src/session/grammar.ts';
import { takesReason } from '../../../src/session/hearing.ts';
import { continueRecord } from '../../../src/session/record-keeping.ts';
import { ResumeError } from '../../../src/session/resume.ts';
import { Session } from '../../../src/session/session.ts';
import { VirtualClock } from '../../../src/session/virtual-clock.ts';
import type { Heard } from '../../../src/voice/ports.ts';
import { SilentSink } from '../../../src/voice/speakers/silent-sink.ts';
import { SpeechQueue } from '../../../src/voice/speech-queue.ts';
import { type BusRig, dm1Frame, goodEngine, hurriedSix, joined } from '../../helpers/bus-rig.ts';
import { goodReply, type Rig, rig, rigAround, speakingTime } from '../../helpers/session-rig.ts';

/** What may happen in a session besides what goes well; what is not possible at every moment stands here more often. */
const mishaps = [
  'correction',
  'correction',
  'correction',
  'denial',
  'otherNumber',
  'otherReply',
  'nonsense',
  'control',
  'skip',
  'skip',
  'skip',
  'stop',
  'stopBySecond',
  'secondSpeaks',
  'waiting',
  'noise',
  'problem',
  'command',
  'restart',
  'busFault',
] as const;
export type Mishap = (typeof mishaps)[number];

export interface HonestSession {
  readonly path: string;
  /** How often each thing happened. */
  readonly happened: ReadonlyMap<Mishap, number>;
  readonly withBus: boolean;
}

/** More turns than a start needs in which much goes wrong. */
const MOST_TURNS = 550;

/** Texts that people type, and some that nobody would. */
const oddTexts = [
  'xyz',
  'ça va ?',
  'גומי שחוק',
  '🔧🛢️',
  '\ud83d',
  '"}\n{',
  ' ',
  '-40',
  '1e3',
  'constructor',
  'a'.repeat(9000),
];

/**
 * Holds one session with real parts that is led mostly well and often not, as this number says, and leaves its record
 * at the path: closed, broken off, or left.
 */
export async function honestSession(path: string, seed: number): Promise<HonestSession> {
  const random = uniform(seed);
  // The first few numbers of neighbouring seeds are alike.
  for (let skipped = 0; skipped < 8; skipped += 1) random();
  const withBus = random() < 0.4;
  const language: LanguageCode = random() < 0.3 ? 'fr' : 'en';
  const profile = withBus || random() < 0.5 ? await hurriedSix() : 'demo-four';
  const first = await rig(profile, random() < 0.5 ? 'us' : 'metric', path, language);
  const person = new People(first, random, withBus);
  await first.session.begin();
  await person.lead();
  return { path, happened: person.happened, withBus };
}

class People {
  readonly happened = new Map<Mishap, number>();
  readonly #random: () => number;
  readonly #withBus: boolean;
  readonly #path: string;
  /** How much goes wrong in this session: from hardly anything to nearly everything. */
  readonly #trouble: number;
  #run: Rig;
  #bus: BusRig | null = null;
  #commands = 0;
  #utterances = 0;

  constructor(run: Rig, random: () => number, withBus: boolean) {
    this.#run = run;
    this.#random = random;
    this.#withBus = withBus;
    this.#path = run.path;
    this.#trouble = 0.01 + 0.25 * random() ** 3;
  }

  async lead(): Promise<void> {
    this.#join();
    // One in four is left in the middle.
    const turns = Math.ceil(MOST_TURNS * (this.#random() < 0.25 ? this.#random() : 1));
    for (let turn = 0; turn < turns && !this.#over; turn += 1) {
      if (this.#bus) goodEngine(this.#bus);
      if (this.#random() < this.#trouble) await this.#goWrong();
      else await this.#goWell();
    }
    await this.#run.session.settled();
    this.#bus?.link.close();
    if (!this.#closed) await this.#run.record.close();
  }

  #closed = false;

  get #over(): boolean {
    return this.#closed || this.#run.session.moment.status !== 'active';
  }

  #one<T>(list: readonly [T, ...T[]] | readonly T[]): T {
    return list[Math.floor(this.#random() * list.length)] as T;
  }

  async #goWell(): Promise<void> {
    const run = this.#run;
    // With a bus something falls due all the time; and it may give the answer by itself.
    if (this.#bus && this.#random() < 0.5) await run.pass(2000);
    const reply = goodReply(run);
    if (reply !== null) await run.type(reply);
    const waitMs = this.#bus ? 10_000 : Math.max(1, (run.clock.nextMs() ?? 0) - run.clock.nowMs());
    await run.pass(reply === null ? waitMs : 1500);
  }

  async #goWrong(): Promise<void> {
    for (let tries = 0; tries < 8; tries += 1) {
      const mishap = this.#one(mishaps);
      if (!(await this.#mishap(mishap))) continue;
      this.happened.set(mishap, (this.happened.get(mishap) ?? 0) + 1);
      return;
    }
  }

  /** @returns whether it could happen now */
  async #mishap(mishap: Mishap): Promise<boolean> {
    const { session } = this.#run;
    const { language } = session.parts;
    const offer = offerOf(session.moment);
    const say = (wordings: readonly string[]) => this.#run.type(this.#one(wordings));
    switch (mishap) {
      case 'correction': {
        if (offer.corrects === undefined) return false;
        await this.#run.type(this.#number());
        return true;
      }
      case 'denial': {
        if (!offer.replies.includes('no')) return false;
        await say(language.replies.no);
        return true;
      }
      case 'otherNumber':
        if (offer.quantity === undefined) return false;
        await this.#run.type(this.#number());
        return true;
      case 'otherReply': {
        if (offer.replies.length === 0) return false;
        await say(language.replies[this.#one(offer.replies)]);
        return true;
      }
      case 'nonsense':
        await this.#run.type(this.#one(oddTexts));
        return true;
      case 'control':
        await say(
          language.controls[this.#one(Object.keys(language.controls) as (keyof typeof language.controls)[])],
        );
        return true;
      case 'skip':
        await say(language.controls.skip);
        if (!takesReason(session.moment)) return false;
        await this.#run.type(
          this.#random() < 0.5 ? this.#one(oddTexts) : this.#one(language.replies.reasonNotFitted),
        );
        return true;
      case 'stop':
        await say(language.stopWordings);
        return true;
      case 'stopBySecond':
        session.receive({ type: 'stop' }, 'second', 'touch');
        await this.#run.pass(1);
        return true;
      case 'secondSpeaks':
        session.hear(
          this.#heard(),
          this.#one(['voice', 'touch']),
          this.#one<Person>(['second', 'supervisor', 'technician']),
        );
        await this.#run.pass(1);
        return true;
      case 'waiting':
        await this.#run.pass(Math.floor(this.#random() * 120_000));
        return true;
      case 'noise':
        for (let more = 0; more < 3; more += 1) {
          this.#utterances += 1;
          const utterance = {
            nth: this.#utterances,
            speechDbfs: -60 + 55 * this.#random(),
            aboveNoiseDb: 30 * this.#random(),
          };
          session.level({
            levelDbfs: -30,
            clipping: this.#random() < 0.3,
            speech: true,
            noiseDbfs: -50,
            utterance,
          });
        }
        await this.#run.pass(1);
        return true;
      case 'problem':
        session.report(this.#one(oddTexts));
        return true;
      case 'command':
        this.#commands += 1;
        session.keep('command', {
          id: `c${this.#commands}`,
          // The same device is in no two sessions: what two records hold of it would be there twice.
          device: `d-${this.#run.path}`,
          name: this.#one(oddTexts),
          role: 'second',
          do: 'say',
        });
        return true;
      case 'restart':
        return this.#restart();
      case 'busFault':
        if (!this.#bus) return false;
        this.#bus.dm1 = this.#one([
          dm1Frame({ spn: 157, fmi: 18 }),
          dm1Frame({ spn: 97, fmi: 15 }, { amberWarning: true }),
          dm1Frame({ spn: 500, fmi: 3 }, { redStop: true }),
          null,
        ]);
        if (this.#random() < 0.3) this.#bus.sends.set(100, this.#random() * 300);
        if (this.#random() < 0.3) this.#bus.sends.set(190, this.#random() * 3000);
        this.#bus.send();
        await this.#run.pass(1000);
        return true;
    }
  }

  /** A number in the user's units, of any size that may be said or none. */
  #number(): string {
    const { moment, parts } = this.#run.session;
    const slot = grammarOf(moment, parts.language, parts.units, 'keys').number;
    const [min, max, step] = slot ? [slot.min, slot.max, slot.step] : [0, 100, 1];
    const value = min + Math.round(((max - min) * this.#random()) / step) * step;
    return String(Math.round(value * 10) / 10).replace('.', parts.language.words.decimalMark);
  }

  /** What an ear may make of somebody's words now, for better or worse. */
  #heard(): Heard {
    const { moment, parts } = this.#run.session;
    const { replies, number, stop } = grammarOf(moment, parts.language, parts.units, 'voice');
    const confidence = this.#random();
    const kind = this.#one(['reply', 'reply', 'number', 'unclear', 'stop'] as const);
    const reply = replies.length > 0 ? this.#one(replies) : undefined;
    if (kind === 'reply' && reply) return { kind, id: reply.id, text: reply.wordings[0] ?? '', confidence };
    if (kind === 'number' && number) {
      const value =
        number.min + Math.round(((number.max - number.min) * this.#random()) / number.step) * number.step;
      return { kind, id: number.id, value, text: String(value), confidence };
    }
    if (kind === 'stop') return { kind, text: stop[0] ?? '' };
    return { kind: 'unclear', text: this.#one(oddTexts), reason: 'lowConfidence' };
  }

  /** The program ends, somehow, and another run of it goes on with the record. */
  async #restart(): Promise<boolean> {
    const before = this.#run;
    await before.session.settled();
    this.#bus?.link.close();
    this.#bus = null;
    await before.record.close();
    before.clock.setAlarm(null, () => {});
    if (this.#random() < 0.5) await this.#tear();
    const offMs = this.#random() * 3_600_000;
    try {
      const { record, restored, clock } = await continueRecord(
        this.#path,
        beginMs => new VirtualClock(new Date(before.clock.wall().getTime() + offMs - beginMs), beginMs),
      );
      if (!(clock instanceof VirtualClock)) throw new Error('another clock');
      const speech = new SpeechQueue(
        speakingTime,
        new SilentSink((ms, signal) => clock.sleep(ms, signal)),
        () => clock.nowMs(),
      );
      const session = new Session({ ...before.session.parts, clock, record, speech }, restored.moment);
      this.#run = rigAround(session, clock, record, this.#path);
      this.#join();
      await session.begin();
    } catch (error) {
      if (!(error instanceof ResumeError)) throw error;
      this.#closed = true;
    }
    return true;
  }

  /** Power is lost while the last event and what it led to are written: any part of that may be missing. */
  async #tear(): Promise<void> {
    const { entries } = await readLog(this.#path);
    const lastEvent = entries.findLastIndex(
      ({ kind }) => kind === 'event' || kind === 'resumed' || kind === 'recovered',
    );
    if (lastEvent < 1) return;
    const bytes = await readFile(this.#path);
    const lines = bytes.toString('utf8').split('\n');
    const sure = Buffer.byteLength(
      lines
        .slice(0, lastEvent)
        .map(line => `${line}\n`)
        .join(''),
    );
    await copyFile(this.#path, `${this.#path}.whole`);
    await writeFile(this.#path, bytes.subarray(0, sure + Math.floor(this.#random() * (bytes.length - sure))));
  }

  #join(): void {
    if (this.#withBus) this.#bus = joined(this.#run);
    if (this.#bus) this.#run = this.#bus;
  }
}
