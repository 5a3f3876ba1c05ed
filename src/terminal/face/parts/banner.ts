import type { View } from '../../../session/view.ts';
import { type Line, line, type Tone } from '../line.ts';
import { centre } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

type BannerView = Pick<View, 'state' | 'engine' | 'outcome'>;

interface Banner {
  readonly words: readonly string[];
  readonly tone: Tone;
  /** Around the words, so that a banner is one without colour or inverse too. */
  readonly mark: string;
}

const engineWord = (engine: View['engine'], words: FaceWords) =>
  ({ off: [], cranking: [words.cranking], running: [words.running], unsure: [] })[engine];

function bannerOf({ state, engine, outcome }: BannerView, words: FaceWords): Banner {
  const mayTurn = engine === 'off' ? [] : [words.mayTurn];
  switch (state) {
    case 'stopped':
      return { words: [words.stopped, ...mayTurn], tone: 'alarm', mark: '!!!' };
    case 'held':
      return { words: [words.held, ...engineWord(engine, words)], tone: 'held', mark: '===' };
    case 'over':
      return outcome === 'signedOff'
        ? { words: [words.signedOff, ...mayTurn], tone: 'title', mark: '---' }
        : { words: [words.ended, ...mayTurn], tone: 'alarm', mark: '---' };
    case 'working':
      if (engine === 'cranking') return { words: [words.cranking], tone: 'cranking', mark: '###' };
      if (engine === 'running') return { words: [words.running], tone: 'running', mark: '***' };
      return { words: [words.engineOff], tone: 'normal', mark: '' };
  }
}

/** What the engine does and whether the session is stopped or held, in words. */
export const bannerWords = (view: BannerView, words: FaceWords): string =>
  bannerOf(view, words).words.join(' - ');

/** The same over the full width. */
export function bannerLine(view: BannerView, width: number, words: FaceWords): Line {
  const { mark, tone } = bannerOf(view, words);
  return line(centre(`${mark} ${bannerWords(view, words)} ${mark}`.trim(), width), tone);
}
