import type { View } from '../../../session/view.ts';
import { type Line, line } from '../line.ts';
import { ends, oneLine } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

const WIDE = 90;

/** Which engine, that it is a rehearsal or that the engine is invented, and which phase of how many: one line over the full width. */
export function titleBar(
  view: Pick<View, 'profileName' | 'invented' | 'rehearsal' | 'phase' | 'phaseNumber' | 'phaseCount'>,
  width: number,
  words: FaceWords,
): Line {
  const invented = width >= WIDE ? words.invented : words.inventedShort;
  const phase = `${view.phaseNumber}/${view.phaseCount} ${oneLine(view.phase)} `;
  const mark = view.rehearsal ? words.rehearsal : view.invented ? invented : null;
  const right = mark === null ? phase : `*${mark}*  ${phase}`;
  return line(ends(` ${words.name}  ${oneLine(view.profileName)}`, right, width), 'title');
}
