import { constants } from 'node:fs';
import { access, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { offerOf } from '../../../machines/moment.ts';
import { languages } from '../../../prompts/index.ts';
import { systemCause } from '../../files/cause.ts';
import { loadProfile } from '../../profile/load.ts';
import { readLog } from '../../record/index.ts';
import { answerByItself } from '../../rehearsal/by-itself.ts';
import { debrief } from '../../rehearsal/debrief.ts';
import { parseFault, RehearsalError } from '../../rehearsal/faults.ts';
import { isOnlyWaiting } from '../../rehearsal/pace.ts';
import { createRehearsal, type Rehearsal, type RehearsalOptions } from '../../rehearsal/rehearsal.ts';
import { hearModel } from '../../rehearsal/sound/heard-model.ts';
import { gaugeValue } from '../../rehearsal/trainee/gauge-value.ts';
import { firingOf, joinEngineEar } from '../../session/engine-ear/join-engine-ear.ts';
import type { SessionHeader } from '../../session/header.ts';
import { PacedClock } from '../../session/paced-clock.ts';
import { beginRecord, recordName } from '../../session/record-keeping.ts';
import type { Session } from '../../session/session.ts';
import { joinBus } from '../../session/vehicle/join-bus.ts';
import type { Viewer } from '../../session/viewer.ts';
import { readInSilence } from '../../voice/speakers/read-in-silence.ts';
import { faceWords } from '../face/words/index.ts';
import { jobCardOf } from '../run/job.ts';
import { lookAtNamed } from '../run/looked-at.ts';
import { runSession } from '../run/run-session.ts';
import { voiceFor } from '../run/warm-voice.ts';
import { debriefLines, rehearsalCode } from './debrief-words.ts';
import type { RehearseOptions } from './options.ts';
import { sightsOf } from './sights.ts';

/** Sound takes its time: where time passes faster than this the engine is not listened to. */
const HEARD_UP_TO_PACE = 8;

/**
 * A whole rehearsal in this terminal, then its debrief on the screen and, where wished, in a file.
 * @returns the exit code: that of a start (0 signed off, 3 ended without sign-off, 4 left before its end), or 5 where
 * a fault was missed or an answer given that the engine contradicts
 * @throws ProfileError, JobCardError, RehearsalError or RecordError, each one sentence
 */
export async function rehearse(options: RehearseOptions): Promise<number> {
  const profile = await loadProfile(options.profile);
  const plan: RehearsalOptions = {
    seed: options.seed,
    ambientC: options.ambient,
    faults: options.fault.map(parseFault),
  };
  const job = await jobCardOf(options, profile);
  const { language } = options;
  const units = options.units ?? languages[language].usualUnits;
  const header: SessionHeader = { profile, job, language, units, rehearsal: true };
  const clock = new PacedClock(new Date(), options.byItself ? options.speed : 1);
  const inRun = options.byItself ? { ...options, silent: true, mic: false } : options;
  const named = await lookAtNamed(inRun, language);
  if (options.json !== undefined) await mayWriteDebrief(options.json);
  const path = options.log ?? `${recordName(new Date())}-rehearsal.jsonl`;
  const record = await beginRecord(path, header, clock);
  let rehearsal: Rehearsal | undefined;
  const { end, closing } = await runSession({
    options: inRun,
    header,
    record,
    clock,
    ...named,
    byItself: options.byItself,
    voice: options.byItself ? { synthesizer: readInSilence, soundless: true } : voiceFor(options, language),
    beside(session, viewer) {
      rehearsal = createRehearsal(session, clock, plan);
      return standBeside(session, viewer, rehearsal, () => {
        if (!options.byItself) clock.setPace(isOnlyWaiting(session.moment) ? options.speed : 1);
      });
    },
  });
  const { injected = [], contradictions = [] } = rehearsal ?? {};
  const beside = { planned: plan.faults, injected, contradictions };
  const told = debrief((await readLog(path)).entries, beside, end);
  const manner = { words: faceWords[language].debrief, language: languages[language], units };
  for (const line of [...closing, ...debriefLines(told, manner)]) console.log(line);
  if (options.json !== undefined) await writeJson(options.json, told);
  return rehearsalCode(told);

  /** The engine goes along with the session until that is over. */
  function standBeside(session: Session, viewer: Viewer, engine: Rehearsal, keepPace: () => void) {
    const leaving = new AbortController();
    if (options.byItself) answerByItself(session, engine, plan);
    const readOff = () => {
      const { quantity } = offerOf(session.moment);
      return quantity === undefined
        ? null
        : { quantity, si: gaugeValue(quantity, engine.gauges, profile, plan.ambientC) };
    };
    engine.watch(() => viewer.sees(sightsOf(engine.gauges, session.parts, faceWords[language], readOff())));
    session.watch(keepPace);
    const ear = joinEngineEar(session, () => viewer.showsEngineEar(ear));
    const hear = hearModel(firingOf(profile), options.seed, heard => ear.take(heard));
    engine.eachStep(state => {
      if (clock.pace <= HEARD_UP_TO_PACE) hear(state);
    });
    const running = engine.run(leaving.signal);
    const link =
      profile.bus && joinBus(session, engine.source, profile.bus, () => link && viewer.showsBus(link));
    return async () => {
      link?.close();
      ear.close();
      leaving.abort();
      await running;
    };
  }
}

function refuseDebrief(path: string, cause: unknown): never {
  throw new RehearsalError(
    `The debrief cannot be written to ${path}: ${systemCause(cause)}; choose a file that can be.`,
  );
}

/** @throws RehearsalError before anything is begun: a whole rehearsal later it would be too late */
async function mayWriteDebrief(path: string): Promise<void> {
  await access(dirname(path), constants.W_OK).catch(cause => refuseDebrief(path, cause));
}

async function writeJson(path: string, told: unknown): Promise<void> {
  await writeFile(path, `${JSON.stringify(told, null, 2)}\n`).catch(cause => refuseDebrief(path, cause));
}
