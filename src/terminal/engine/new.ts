import { bySentence } from '../../../prompts/by-sentence.ts';
import type { Language } from '../../../prompts/types.ts';
import { buildProfile } from '../../interview/build.ts';
import {
  type Answers,
  askedQuestions,
  nextQuestion,
  progressOf,
  withoutAnswer,
} from '../../interview/interview.ts';
import type { QuestionId } from '../../interview/question.ts';
import { questions } from '../../interview/questions/index.ts';
import { valueName } from '../../interview/words.ts';
import { acceptableNames, accepting } from '../../profile/accepting.ts';
import { loadProfile, ProfileError } from '../../profile/load.ts';
import { assumedFields, unfitFor } from '../../profile/provenance.ts';
import type { Profile } from '../../profile/schema.ts';
import { answerLines, askAll, HELP } from './ask.ts';
import type { TalkIo } from './io.ts';
import {
  answersPath,
  exists,
  keepAnswers,
  keptAnswers,
  mayWrite,
  profileHash,
  writeProfile,
} from './profile-file.ts';

export interface NewOptions {
  readonly all: boolean;
  /** Questions that are asked again, of an interview that was held before. */
  readonly again: readonly string[];
}

/** The supervisor is asked for a name for each of what may stay assumed only so. */
async function askSupervisor(io: TalkIo, profile: Profile, language: Language): Promise<Profile> {
  const print = (sentence: string) => io.print(`  ${bySentence(sentence, language.bySentence)}`);
  let accepted = profile;
  for (const unfit of unfitFor(profile)) {
    if (unfit.kind === 'neverAssumed') {
      print(`Has to be read or measured before its first fire: ${valueName(unfit.field, language)}.`);
      continue;
    }
    const named = unfit.fields.map(path => valueName(path, language)).join(', ');
    io.print('');
    print(`Only assumed of ${acceptableNames[unfit.what]}: ${named}.`);
    print('Supervisor: your name accepts that; Enter leaves it open.');
    const name = (await io.ask('  > '))?.trim() ?? '';
    if (name !== '') accepted = accepting(accepted, unfit.what, name.slice(0, 80));
  }
  return accepted;
}

/** The question of this name, or of the value of the profile that it settles. */
function questionNamed(id: string): QuestionId {
  const found = questions.find(question => question.id === id || question.fields.some(path => path === id));
  if (!found)
    throw new ProfileError(id, [
      'is no question; without --again all answers are listed, to choose from by number.',
    ]);
  return found.id;
}

const NUMBERS = /^\s*\d+(?:[\s,]+\d+)*\s*$/;

/** Which answers of a finished interview are given again: by their numbers in its list; none where it is left as it is. */
async function askAgain(
  io: TalkIo,
  answers: Answers,
  all: boolean,
  language: Language,
): Promise<readonly QuestionId[]> {
  const tell = (sentence: string) => io.print(bySentence(sentence, language.bySentence));
  for (const line of answerLines(answers, all, language)) io.print(line);
  tell('All is answered. Numbers of what is to be answered again, such as 5, 12; Enter leaves all as it is.');
  for (;;) {
    const typed = (await io.ask('  > '))?.trim() ?? '';
    if (typed === '') return [];
    const asked = askedQuestions(answers, all);
    const found = typed.split(/[\s,]+/).map(each => asked[Number(each) - 1]?.id);
    if (NUMBERS.test(typed) && !found.includes(undefined)) return found.flatMap(id => id ?? []);
    tell(`Give numbers from 1 to ${asked.length}, or Enter.`);
  }
}

/**
 * Holds an interview, or goes on with one, and writes the profile that it makes.
 * @returns the exit code: 0 where a profile was written, 4 where the interview was left before its end
 */
export async function newEngine(
  path: string,
  { all, again }: NewOptions,
  io: TalkIo,
  language: Language,
): Promise<number> {
  const print = (sentence: string) => io.print(bySentence(sentence, language.bySentence));
  await mayWrite(path);
  const kept = await keptAnswers(path);
  const thereAlready = await exists(path);
  if (thereAlready && Object.keys(kept).length === 0)
    throw new ProfileError(path, [`is there already; choose another name, or "engine copy ${path} NAME".`]);
  const isFinished = thereAlready && again.length === 0 && nextQuestion(kept, all) === null;
  const anew = isFinished ? await askAgain(io, kept, all, language) : again.map(questionNamed);
  if (isFinished && anew.length === 0) {
    print('Nothing was changed.');
    return 0;
  }
  const begun = anew.reduce(withoutAnswer, kept);
  const { done } = progressOf(begun, all);
  print(
    done === 0
      ? 'A new engine. Have its data plate and the first pages of its manual at hand.'
      : `Going on with ${done} answers from ${answersPath(path)}.`,
  );
  for (const line of HELP) print(line);
  const { answers, finished } = await askAll(io, begun, {
    everything: all,
    language,
    takenBack: kept,
    keep: answered => keepAnswers(path, answered),
  });
  if (!finished) {
    io.print('');
    print(`Left. Go on with: npm start -- engine new ${path}`);
    return 4;
  }
  const version = thereAlready ? (await loadProfile(path)).version + 1 : 1;
  const profile = await askSupervisor(io, { ...buildProfile(answers), version }, language);
  await writeProfile(path, profile);
  const assumed = assumedFields(profile);
  const asked = askedQuestions(answers, all).flatMap(({ fields }) => fields);
  const ofAsked = assumed.filter(field => asked.includes(field));
  const open = unfitFor(profile);
  io.print('');
  print(`Written: ${path}, version ${version}, SHA-256 ${profileHash(profile).slice(0, 16)}.`);
  print(
    `Of what was asked ${ofAsked.length} values are assumed, and ${assumed.length - ofAsked.length} more that nobody is asked for: npm start -- engine show ${path}`,
  );
  for (const field of ofAsked) io.print(`  ${valueName(field, language)}`);
  print(`To change an answer: npm start -- engine new ${path}`);
  if (open.length > 0)
    print(`Not yet fit for the first fire of a real engine: npm start -- engine check ${path}`);
  print(`Practise on it: npm start -- rehearse --profile ${path}`);
  return 0;
}
