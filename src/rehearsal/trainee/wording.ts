import type { Moment } from '../../../machines/moment.ts';
import type { Language } from '../../../prompts/types.ts';
import { grammarOf } from '../../session/grammar.ts';
import { shownUnit, toUser, type UnitSystem, userUnit } from '../../session/units.ts';
import type { Answer } from './answer.ts';

/** An answer in the words in which it would be spoken or typed; null where there is none. */
export function wordAnswer(
  answer: Answer,
  moment: Moment,
  language: Language,
  units: UnitSystem,
): string | null {
  switch (answer?.kind) {
    case 'reply':
      return language.replies[answer.id][0] ?? null;
    case 'value': {
      const unit = userUnit(units, shownUnit(answer.quantity));
      const step = grammarOf(moment, language, units, 'keys').number?.step ?? 1;
      return (Math.round(toUser(unit, answer.si) / step) * step).toFixed(unit.decimals);
    }
    case 'continue':
      return language.controls.continue[0] ?? null;
    case 'stop':
      return language.stopWordings[0] ?? null;
    default:
      return null;
  }
}
