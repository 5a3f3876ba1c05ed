import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { phaseOf } from '../../machines/build-step.ts';
import { type Moment, offerOf } from '../../machines/moment.ts';
import type { Person } from '../../machines/vocabulary.ts';
import { english } from '../../prompts/en/index.ts';
import { loadProfile } from '../../src/profile/load.ts';
import { openNewLog, readLog } from '../../src/record/index.ts';
import { ofKind, readRecorded } from '../../src/record/vocabulary/index.ts';
import { headerData } from '../../src/session/header.ts';
import { Session } from '../../src/session/session.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';
import { durationMs } from '../../src/voice/audio/blocks.ts';
import type { Synthesizer } from '../../src/voice/ports.ts';
import { SilentSink } from '../../src/voice/speakers/silent-sink.ts';
import { SpeechQueue } from '../../src/voice/speech-queue.ts';
import { goodReply, job, rigAround, speakingTime } from '../../tests/helpers/session-rig.ts';
import { goodPauseMs } from '../../tests/machines/helpers/good.ts';

/** By which means people answer. */
export const means = ['voice', 'keys'] as const;
export type Means = (typeof means)[number];

/** What one person has to say in one phase, and how long the tool speaks there. */
export interface Share {
  readonly phase: string;
  readonly person: Person;
  readonly answers: number;
  readonly spokenS: number;
}

/** One answer: in which state it was given, what was said since the answer before, and the answer. */
export interface Answer {
  readonly state: string;
  readonly person: Person;
  readonly said: readonly string[];
  readonly reply: string;
}

/** People hear a sentence to its end and take this long to answer, but not where seconds count. */
const REACTS_MS = 600;
/** A gauge that moves is looked at for so long before its value is told. */
const READS_MS = 2500;
const pauseMs = (moment: Moment) => goodPauseMs(moment) ?? (offerOf(moment).quantity ? READS_MS : REACTS_MS);
/** A hazard is called out twice. */
const HAZARD_TIMES = 2;

/**
 * Leads a start in which all goes well through the real session, each answer as it is asked for, and counts: answers
 * by the person who gives them, and the seconds of speech, heard to their end, by the person who is asked next.
 */
export async function leadGoodStart(
  profileName: string,
  by: Means,
  voice: Synthesizer,
  tell: (answer: Answer) => void = () => {},
): Promise<readonly Share[]> {
  const folder = mkdtempSync(join(tmpdir(), 'words-'));
  const path = join(folder, 'record.jsonl');
  const profile = await loadProfile(profileName);
  const clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'));
  const header = { profile, job, language: 'en', units: 'us' } as const;
  const record = await openNewLog(path, headerData(header), {
    wall: () => clock.wall(),
    monoMs: () => clock.nowMs(),
  });
  const sink = new SilentSink((ms, signal) => clock.sleep(ms, signal));
  const speech = new SpeechQueue(speakingTime, sink, () => clock.nowMs());
  const session = new Session({ profile, job, language: english, units: 'us', clock, record, speech });
  const rig = rigAround(session, clock, record, path, by);

  const shares = new Map<string, { answers: number; spokenS: number }>();
  const add = (phase: string, person: Person, answers: number, spokenS: number) => {
    const key = `${phase} ${person}`;
    const known = shares.get(key) ?? { answers: 0, spokenS: 0 };
    shares.set(key, { answers: known.answers + answers, spokenS: known.spokenS + spokenS });
  };
  /** Whom the sentences that come from now on are said to; they stand in the record behind this entry. */
  const asked: { readonly fromMs: number; readonly phase: string; readonly person: Person }[] = [];
  const look = () => {
    const { moment } = session;
    asked.push({ fromMs: clock.nowMs(), phase: phaseOf(moment.context.step), person: offerOf(moment).by });
  };

  await session.begin();
  look();
  for (let turn = 0; session.moment.status === 'active'; turn += 1) {
    if (turn > 20_000) throw new Error(`The start of ${profileName} hangs in ${rig.key()}.`);
    const reply = goodReply(rig);
    if (reply === null) {
      await rig.pass(Math.max(1, (clock.nextMs() ?? 0) - clock.nowMs()));
    } else {
      const hasty = rig.key().startsWith('firstFire.oilPressure');
      for (let waits = 0; session.speaking && waits < 1000; waits += 1)
        await rig.pass(Math.max(1, (clock.nextMs() ?? 0) - clock.nowMs()));
      await rig.pass(hasty ? 1 : pauseMs(session.moment));
      // What was said meanwhile may have been overtaken by the clock.
      if (goodReply(rig) !== reply) continue;
      add(phaseOf(session.moment.context.step), offerOf(session.moment).by, 1, 0);
      tell({ state: rig.key(), person: offerOf(session.moment).by, said: rig.said.splice(0), reply });
      await rig.type(reply);
    }
    look();
  }
  await record.close();
  const { entries } = await readLog(path);
  rmSync(folder, { recursive: true, force: true });
  for (const { timeMs, data } of readRecorded(entries).entries.filter(ofKind('said'))) {
    const to = asked.find(each => each.fromMs >= timeMs) ?? asked.at(-1);
    const sound = await voice.synthesize(data.text);
    const times = data.priority === 'hazard' ? HAZARD_TIMES : 1;
    if (to) add(to.phase, to.person, 0, (times * durationMs(sound)) / 1000);
  }
  return [...shares].map(([key, share]) => {
    const [phase = '', person = ''] = key.split(' ');
    return { phase, person: person as Person, ...share };
  });
}
