import { type Moment, stateName } from '../../../machines/moment.ts';
import type { Language, ReplyId } from '../../../prompts/types.ts';
import type { Profile } from '../../profile/schema.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { Gauges } from '../gauges.ts';
import type { Random } from '../random.ts';
import { createAlarm } from './alarm.ts';
import { createAnswers } from './answer.ts';
import { wordAnswer } from './wording.ts';

interface TraineeParts {
  readonly profile: Profile;
  readonly language: Language;
  readonly units: UnitSystem;
  readonly ambientC: number;
  readonly random: Random;
  /** Says a line to the session. */
  readonly say: (text: string) => void;
}

/** People take this long from seeing or hearing to speaking, seconds. */
const REACTS_S: readonly [number, number] = [0.8, 1.8];
/** An answer that changed nothing is given again after this. */
const SAYS_AGAIN_S = 6;

/** Stands in for the people at the engine: answers what is asked from what the gauges show, and shouts stop. */
export function createTrainee({ profile, language, units, ambientC, random, say }: TraineeParts) {
  const answerTo = createAnswers(profile);
  const alarmAt = createAlarm(profile);
  const answered = new Map<string, number>();
  let suspected: ReplyId | null = null;
  let asked: Moment | null = null;
  let askedMs = 0;
  let speaksFromMs = 0;
  let alarmedMs: number | null = null;

  const reaction = () => 1000 * random.between(...REACTS_S);

  function shoutIfNeeded(moment: Moment, nowMs: number, gauges: Gauges): boolean {
    const cause = alarmAt(moment, gauges);
    if (!cause) alarmedMs = null;
    else if (alarmedMs === null) alarmedMs = nowMs + reaction();
    else if (nowMs >= alarmedMs) {
      suspected = cause;
      alarmedMs = null;
      say(language.stopWordings[0] ?? '');
      return true;
    }
    return false;
  }

  return {
    /** Looks once; to be called several times a second. `speaking`: the tool is talking just now. */
    look(moment: Moment, speaking: boolean, nowMs: number, gauges: Gauges): void {
      if (moment.status === 'done' || shoutIfNeeded(moment, nowMs, gauges)) return;
      if (moment !== asked) {
        const name = stateName(moment);
        // Time that goes by, as a hold tells it, is no new question.
        if (!asked || stateName(asked) !== name || moment.context.lastSaid !== asked.context.lastSaid) {
          askedMs = nowMs;
          speaksFromMs = nowMs + reaction();
        }
        asked = moment;
      }
      if (nowMs < speaksFromMs || (speaking && !moment.hasTag('critical'))) return;
      const name = stateName(moment);
      const before = answered.get(name) ?? 0;
      const answer = answerTo({
        moment,
        gauges,
        ambientC,
        askedS: (nowMs - askedMs) / 1000,
        answered: before,
        suspected,
      });
      const text = wordAnswer(answer, moment, language, units);
      if (text === null) return;
      if (answer?.kind === 'stop') suspected = answer.cause;
      answered.set(name, before + 1);
      speaksFromMs = nowMs + 1000 * SAYS_AGAIN_S;
      say(text);
    },
  };
}
