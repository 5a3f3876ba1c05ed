import { CompositionError } from '../../../machines/composition.ts';
import { buildFirstStart } from '../../../machines/first-start.ts';
import { bySentence } from '../../../prompts/by-sentence.ts';
import type { Language } from '../../../prompts/types.ts';
import { valueName } from '../../interview/words.ts';
import { acceptableNames } from '../../profile/accepting.ts';
import { fields } from '../../profile/fields.ts';
import { saysWhere, type Unfit, unfitFor } from '../../profile/provenance.ts';
import type { Profile } from '../../profile/schema.ts';

/** What keeps a profile from the first fire of a real engine, as a sentence with what to do. */
export const unfitSentence = (unfit: Unfit, language: Language): string =>
  bySentence(
    unfit.kind === 'neverAssumed'
      ? `${unfit.field}: ${valueName(unfit.field, language)} has to be read or measured before a real first fire; ${fields[unfit.field].where}.`
      : `${unfit.fields.join(', ')}: ${acceptableNames[unfit.what]} may stay assumed only where the supervisor accepts it by name; engine accept FILE --by NAME.`,
    language.bySentence,
  );

interface Checked {
  readonly lines: readonly string[];
  readonly good: boolean;
}

/** Whether a profile makes a procedure, and is fit for the first fire of a real engine. */
export function checkProfile(profile: Profile, source: string, language: Language): Checked {
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  const unfit = unfitFor(profile);
  try {
    buildFirstStart(profile);
  } catch (error) {
    if (!(error instanceof CompositionError)) throw error;
    return { lines: error.faults, good: false };
  }
  const older =
    unfit.length > 0 && !saysWhere(profile)
      ? [
          tell(
            `provenance: ${source} does not say where its values come from, so all of them count as assumed.`,
          ),
        ]
      : [];
  return {
    lines: [
      tell(`${source}: every value is allowed, and they make a procedure.`),
      ...older,
      ...unfit.map(each => unfitSentence(each, language)),
      ...(unfit.length === 0 && !profile.invented ? [tell('It is fit for a first fire.')] : []),
      ...(profile.invented ? [tell('It is an invented engine: for practice only.')] : []),
    ],
    good: unfit.length === 0,
  };
}
