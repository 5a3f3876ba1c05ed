import type { HearingView } from '../../../session/view.ts';
import { fill } from '../../../session/wording.ts';
import { type Line, line } from '../line.ts';
import { cut, oneLine, widthOf } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

/** Below this nothing is drawn; 0 dBFS fills the meter. */
const QUIETEST_DBFS = -60;
const METER = 12;
const GAP = '   ';

/** A meter of 12 columns over 60 dB. */
export function meter(levelDbfs: number | null): string {
  const share = levelDbfs === null ? 0 : 1 - levelDbfs / QUIETEST_DBFS;
  const lit = Number.isFinite(share) ? Math.round(Math.min(1, Math.max(0, share)) * METER) : 0;
  return `[${'█'.repeat(lit)}${'·'.repeat(METER - lit)}]`;
}

function levelText({ levelDbfs, clipping, speech, speaking }: HearingView, words: FaceWords): string {
  const level =
    levelDbfs === null ? words.noLevel : `${meter(levelDbfs)} ${Math.round(Math.max(-99, levelDbfs))} dBFS`;
  const marks = [
    ...(clipping ? [words.clipping] : []),
    ...(speech ? [words.speech] : []),
    ...(speaking ? [words.speaking] : []),
  ];
  return [level, ...marks].join(' ');
}

function heardText({ last }: HearingView, words: FaceWords): string {
  if (!last) return words.nothingHeard;
  return fill(last.counted ? words.heard : words.notCounted, {
    text: fill(words.quoted, { text: oneLine(last.text) }),
    by: words.people[last.by],
  });
}

/** What listens, how loud it is, and the last thing heard: one line where both fit, else two. */
export function hearing(view: HearingView, width: number, words: FaceWords): Line[] {
  const ear = `${words.hears} ${oneLine(view.source)} ${levelText(view, words)}`;
  const heard = heardText(view, words);
  const tone = view.clipping ? 'bad' : 'normal';
  const heardTone = view.last && !view.last.counted ? 'bad' : 'normal';
  if (widthOf(ear + GAP + heard) <= width)
    return [line(ear + GAP + heard, tone === 'bad' ? tone : heardTone)];
  return [line(cut(heard, width), heardTone), line(cut(ear, width), tone)];
}
