import { isEmergency } from '../../../machines/emergency.ts';
import type { Firing } from '../../engineering/engine-sound/firing.ts';
import { type BayState, type ClientMessage, type Deed, sentVoice } from '../../server/protocol/index.ts';
import { BELONGS_WITHIN_MS } from '../../session/who-speaks/join-voices.ts';
import type { Recognizer } from '../../voice/ports.ts';
import type { ListenToEngine } from '../hearing/start-hearing.ts';

interface BayLine {
  readonly state: Pick<BayState, 'turn' | 'session' | 'firing'> | null;
  command(deed: Deed): void;
  tell(message: Extract<ClientMessage, { type: 'engine' | 'voiceOfStop' }>): void;
}

/**
 * What this device hears goes to the bay's session, never as sound: what was said, in whose voice as a direction of so many
 * numbers, and what is heard of the engine.
 */
export class HeardThere {
  readonly #line: () => BayLine;
  readonly #nowMs: () => number;
  #voice: { readonly voice: Float32Array; readonly atMs: number } | null = null;
  #listenToEngine: ListenToEngine | null = null;
  /** The engine that is listened for, and in which session. */
  #listenedFor = '';

  constructor(line: () => BayLine, nowMs: () => number) {
    this.#line = line;
    this.#nowMs = nowMs;
  }

  attach(recognizer: Recognizer): void {
    recognizer.onVoice?.(({ voice, stopped }) => {
      if (stopped) this.#line().tell({ type: 'voiceOfStop', voice: sentVoice(voice) });
      this.#voice = stopped ? null : { voice, atMs: this.#nowMs() };
    });
    recognizer.onHeard(heard => {
      const { state } = this.#line();
      const voice = this.#takeVoice();
      if (heard.kind === 'stop') {
        const { calls: cause } = heard;
        this.#line().command({ do: 'stop', via: 'voice', ...(isEmergency(cause) ? { cause } : {}) });
      } else if (state?.turn)
        this.#line().command({ do: 'heard', turn: state.turn, heard, ...(voice ? { voice } : {}) });
    });
  }

  /** This device hears sound itself, in which an engine can be heard. */
  hearsEngines(listen: ListenToEngine): void {
    this.#listenToEngine = listen;
    this.#listenedFor = '';
    this.look();
  }

  /** Another session may have begun, with another engine. */
  look(): void {
    const { session = null, firing = null } = this.#line().state ?? {};
    if (!this.#listenToEngine || session === null || !firing) return;
    const key = `${session} ${JSON.stringify(firing)}`;
    if (key === this.#listenedFor) return;
    this.#listenedFor = key;
    this.#listen(session, firing);
  }

  #listen(session: string, firing: Firing): void {
    this.#listenToEngine?.(firing, heard => {
      // Once its session is over nobody is told any more.
      if (this.#line().state?.session === session && this.#line().state?.firing)
        this.#line().tell({ type: 'engine', session, heard: { ...heard, levelsDb: [...heard.levelsDb] } });
    });
  }

  #takeVoice(): number[] | null {
    const last = this.#voice;
    this.#voice = null;
    return last && this.#nowMs() - last.atMs <= BELONGS_WITHIN_MS ? sentVoice(last.voice) : null;
  }
}
