import type { Language, UnitId } from '../../prompts/types.ts';
import { conversionOf, isConverted, unitsOf } from '../engineering/units.ts';
import type { NumberSlot } from '../voice/ports.ts';
import type { UserUnit } from './units.ts';

/**
 * What may be typed behind a number besides the unit that is asked for: units of the same kind, which are converted, and
 * those of other kinds, by which a number is known to be none of these. Nobody says them: each word more that may be
 * heard is one more to be taken for another.
 */
export function typedUnits(
  asked: UserUnit,
  si: string,
  { units }: Language,
): Pick<NumberSlot, 'otherUnits' | 'wrongUnits'> {
  const wordingsOf = (id: UnitId) => [...units[id].said, units[id].short].filter(each => each !== '');
  const own = wordingsOf(asked.id);
  const kin: readonly UnitId[] = isConverted(si) ? unitsOf(si) : [asked.id];
  const others = isConverted(si) ? unitsOf(si).filter(id => id !== asked.id) : [];
  const otherUnits = others.map(id => {
    const { scale, offset } = conversionOf(id);
    return {
      wordings: wordingsOf(id).filter(each => !own.includes(each)),
      scale: asked.scale / scale,
      offset: asked.offset - (offset * asked.scale) / scale,
    };
  });
  const wrongUnits = (Object.keys(units) as UnitId[]).filter(id => !kin.includes(id)).flatMap(wordingsOf);
  return own.length === 0 ? {} : { otherUnits, wrongUnits };
}
