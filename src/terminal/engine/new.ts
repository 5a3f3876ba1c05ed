import { bySentence } from '../../../prompts/by-sentence.ts';
import type { Language } from '../../../prompts/types.ts';
import { buildProfile } from '../../interview/build.ts';
import { type Answers, progressOf, withoutAnswer } from '../../interview/interview.ts';
import type { QuestionId } from '../../interview/question.ts';
import { questions } from '../../interview/questions/index.ts';
import { valueName } from '../../interview/words.ts';
import { acceptableNames, accepting } from '../../profile/accepting.ts';
import { loadProfile, ProfileError } from '../../profile/load.ts';
import { assumedFields, unfitFor } from '../../profile/provenance.ts';
import type { Profile } from '../../profile/schema.ts';
import { askAll, HELP } from './ask.ts';
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

const isQuestion = (id: string): id is QuestionId => questions.some(question => question.id === id);

/** The answers that are there, without those that are to be given again. */
function begin(kept: Answers, again: readonly string[]): Answers {
  let answers = kept;
  for (const id of again) {
    const found = questions.find(question => question.id === id || question.fields.some(path => path === id));
    if (!found || !isQuestion(found.id))
      throw new ProfileError(id, ['is no question; "engine check" and the page of all fields name them.']);
    answers = withoutAnswer(answers, found.id);
  }
  return answers;
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
  const begun = begin(kept, again);
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
  const open = unfitFor(profile);
  io.print('');
  print(`Written: ${path}, version ${version}, SHA-256 ${profileHash(profile).slice(0, 16)}.`);
  print(`${assumed.length} values are assumed: npm start -- engine show ${path}`);
  if (open.length > 0)
    print(`Not yet fit for the first fire of a real engine: npm start -- engine check ${path}`);
  print(`Practise on it: npm start -- rehearse --profile ${path}`);
  return 0;
}
