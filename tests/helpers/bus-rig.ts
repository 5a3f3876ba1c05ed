import { mkdtempSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { offerOf } from '../../machines/moment.ts';
import type { Quantity } from '../../machines/vocabulary.ts';
import { encodeCanId, GLOBAL_ADDRESS } from '../../src/bus/can-id.ts';
import { DM1_PGN, formatDiagnostics } from '../../src/bus/diagnostics/dm1.ts';
import type { Lamps } from '../../src/bus/diagnostics/lamps.ts';
import { type CanFrame, j1939Frame } from '../../src/bus/frame.ts';
import { type ParameterContent, writeParameter } from '../../src/bus/parameter-codec.ts';
import { PARAMETERS } from '../../src/bus/parameters.ts';
import type { BusEnd, BusNotice, BusSource, OnFrame, OnNotice } from '../../src/bus/ports.ts';
import { loadProfile } from '../../src/profile/load.ts';
import { openNewLog } from '../../src/record/index.ts';
import { headerData } from '../../src/session/header.ts';
import { Session } from '../../src/session/session.ts';
import { type BusLink, joinBus } from '../../src/session/vehicle/join-bus.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';
import { SilentSink } from '../../src/voice/speakers/silent-sink.ts';
import { SpeechQueue } from '../../src/voice/speech-queue.ts';
import { goodReading, goodReply, goUntil, type Rig, rig, rigAround, speakingTime } from './session-rig.ts';

const idOf = (pgn: number, source: number) =>
  encodeCanId({ priority: 6, pgn, source, destination: GLOBAL_ADDRESS });

/** One message with this parameter in it, and everything else not available. */
export function parameterFrame(spn: number, content: ParameterContent, source = 0): CanFrame {
  const definition = PARAMETERS.find(one => one.spn === spn);
  if (!definition) throw new Error(`SPN ${spn} is not in the table.`);
  const data = new Uint8Array(8).fill(0xff);
  writeParameter(definition, content, data);
  return j1939Frame(0, idOf(definition.pgn, source), data);
}

const dark = { status: 'off', flash: 'none' } as const;
const lit = { status: 'on', flash: 'none' } as const;

/** A DM1 of one frame: at most one code. */
export function dm1Frame(
  code: { readonly spn: number; readonly fmi: number } | null,
  lamps: Partial<Record<keyof Lamps, true>> = {},
  source = 0,
): CanFrame {
  const lamp = (name: keyof Lamps) => (lamps[name] ? lit : dark);
  const data = formatDiagnostics(
    {
      malfunction: lamp('malfunction'),
      redStop: lamp('redStop'),
      amberWarning: lamp('amberWarning'),
      protect: lamp('protect'),
    },
    code ? [{ ...code, occurrences: 1 }] : [],
  );
  return j1939Frame(0, idOf(DM1_PGN, source), data);
}

/** A source whose frames, notices and end the test makes. */
export class HandSource implements BusSource {
  readonly description = 'a bus by hand';
  #onFrame: OnFrame = () => {};
  #onNotice: OnNotice = () => {};
  #end: (end: BusEnd) => void = () => {};

  run(onFrame: OnFrame, onNotice: OnNotice): Promise<BusEnd> {
    this.#onFrame = onFrame;
    this.#onNotice = onNotice;
    return new Promise(resolve => {
      this.#end = resolve;
    });
  }
  send(...frames: readonly CanFrame[]): void {
    for (const frame of frames) void this.#onFrame(frame);
  }
  notice(notice: BusNotice): void {
    this.#onNotice(notice);
  }
  end(end: BusEnd): void {
    this.#onFrame = () => {};
    this.#end(end);
  }
  close(): void {
    this.#end({ kind: 'finished' });
  }
}

export interface BusRig extends Rig {
  readonly source: HandSource;
  readonly link: BusLink;
  /** What the engine sends every second from now on, by parameter number. */
  readonly sends: Map<number, ParameterContent>;
  /** Sent with it; null: no DM1. */
  dm1: CanFrame | null;
  /** Sends everything once. */
  send(): void;
}

/** Demo-six with short holds: a test has to live through each of them tick by tick. */
export async function hurriedSix(): Promise<string> {
  const profile = await loadProfile('demo-six');
  const path = join(mkdtempSync(join(tmpdir(), 'profile-')), 'hurried-six.json');
  const shutdown = { ...profile.shutdown, settleS: 10, heatSoakLooksAfterS: [10, 20] };
  const warmUp = { ...profile.warmUp, minS: 180, readEveryS: 36 };
  await writeFile(path, JSON.stringify({ ...profile, shutdown, warmUp }));
  return path;
}

interface Start {
  readonly session: Session;
  readonly nowMs: number;
}

const starts = new Map<string, Promise<Start>>();

/** The moment at which a session without a bus comes to a state; led there once for all tests of a file. */
function startAt(key: string): Promise<Start> {
  const known = starts.get(key);
  if (known) return known;
  const start = (async () => {
    const run = await rig(await hurriedSix());
    await run.session.begin();
    await goUntil(run, key);
    await run.record.close();
    return { session: run.session, nowMs: run.clock.nowMs() };
  })();
  starts.set(key, start);
  return start;
}

/** A new session that begins at a state, as a resumed one does, with a record of its own. */
async function rigAt(key: string): Promise<Rig> {
  const { session: led, nowMs } = await startAt(key);
  const clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'), nowMs);
  const path = join(mkdtempSync(join(tmpdir(), 'session-')), 'record.jsonl');
  const header = { ...led.parts, language: led.parts.language.code };
  const record = await openNewLog(path, headerData(header), {
    wall: () => clock.wall(),
    monoMs: () => clock.nowMs(),
  });
  const speech = new SpeechQueue(speakingTime, new SilentSink((ms, signal) => clock.sleep(ms, signal)), () =>
    clock.nowMs(),
  );
  return rigAround(new Session({ ...led.parts, clock, record, speech }, led.moment), clock, record, path);
}

/** A whole session from the job card, led to a state before its bus is joined. */
export async function wholeBusRig(key: string): Promise<BusRig> {
  const base = await rig(await hurriedSix());
  await base.session.begin();
  await goUntil(base, key);
  return joined(base);
}

/**
 * A session on demo-six, led well to a state without a bus, and then with one that sends every half second what the
 * test puts into `sends`.
 */
export const busRig = async (key: string): Promise<BusRig> => joined(await rigAt(key));

/** The same session, with a bus that sends every half second what the test puts into `sends`. */
export function joined(base: Rig): BusRig {
  const source = new HandSource();
  const { bus } = base.session.parts.profile;
  if (!bus) throw new Error('demo-six has no bus.');
  const link = joinBus(base.session, source, bus);
  const sends = new Map<number, ParameterContent>();
  const made: BusRig = {
    ...base,
    source,
    link,
    sends,
    dm1: null,
    send() {
      source.send(
        ...[...sends].map(([spn, content]) => parameterFrame(spn, content)),
        ...(made.dm1 ? [made.dm1] : []),
      );
    },
  };
  const repeat = async () => {
    while (made.session.moment.status === 'active') {
      await base.clock.sleep(500);
      made.send();
    }
  };
  void repeat();
  return made;
}

/** Coolant of an engine that its thermostat holds. */
const WARM_C = 85;
const SWEEPS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];

/** An engine in good order, as it is in the state that the session is in; nothing while the key is off. */
export function goodEngine(run: BusRig): void {
  const key = run.key();
  const { profile } = run.session.parts;
  const running = /^(firstFire\.(oil|lamps|trans)|checks|warmUp|sweeps|shutdown\.(settle|coolant))/.test(key);
  const sweep = SWEEPS.findIndex(name => key.startsWith(`sweeps.${name}`));
  run.sends.clear();
  run.dm1 = null;
  if (!running && !key.startsWith('keyOn')) return;
  run.sends.set(190, running ? (profile.sweeps[sweep]?.rpm ?? 850) : 0);
  run.sends.set(100, running ? goodReading('oilPressure', run) : 0);
  run.sends.set(110, sweep < 0 ? goodReading('coolantTemperature', run) : WARM_C);
  run.sends.set(168, running ? 14.2 : 12.6);
  run.dm1 = dm1Frame(null);
}

/** Whether the bus is about to answer what is asked now. */
function leftToBus({ session, sends, dm1, key }: BusRig): boolean {
  const { quantity } = offerOf(session.moment);
  if (/\.faults\.asking$/.test(key())) return dm1 !== null;
  if (key().endsWith('.sampling')) return true;
  const spns: Partial<Record<Quantity, number>> = {
    engineSpeed: 190,
    oilPressure: 100,
    coolantTemperature: 110,
    batteryVoltage: 168,
    chargingVoltage: 168,
  };
  const spn = quantity && spns[quantity];
  return spn !== undefined && sends.has(spn);
}

/** All goes well, with the bus answering what it can, until the session is over or in the named state. */
export async function goWithBus(run: BusRig, key = ''): Promise<void> {
  for (let turn = 0; turn < 20_000 && run.session.moment.status === 'active'; turn += 1) {
    goodEngine(run);
    if (key !== '' && run.key() === key) return;
    const reply = leftToBus(run) ? null : goodReply(run);
    if (reply !== null) await run.type(reply);
    await run.pass(1000);
  }
  if (key !== '') throw new Error(`never came to ${key}; the session is at ${run.key()}`);
}
