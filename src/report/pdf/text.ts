import { createRequire } from 'node:module';
import { visualRuns } from './bidi.ts';

export type Doc = PDFKit.PDFDocument;
export type Face = 'plain' | 'bold';

const require = createRequire(import.meta.url);
const files: Readonly<Record<Face, string>> = {
  plain: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
  bold: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'),
};

/** Scripts that the embedded font has letters for. */
const covered =
  /^[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Armenian}\p{Script=Georgian}\p{Script=Common}\p{Script=Inherited}]*$/u;

/** Shaping the letters of a whole stretch together keeps its words in right-to-left order. */
const SHAPED: PDFKit.Mixins.TextOptions = { lineBreak: false, features: ['kern'] };
const PLAIN: PDFKit.Mixins.TextOptions = { lineBreak: false };

export interface Style {
  readonly face: Face;
  readonly size: number;
  readonly color: string;
}

/** Sets text on a page: measures, wraps and draws it, right-to-left stretches in their own direction. */
export class TextSetter {
  readonly #doc: Doc;
  /** Some text had letters that the font has not; a box was drawn in their place. */
  lacksLetters = false;

  constructor(doc: Doc) {
    this.#doc = doc;
    for (const [face, file] of Object.entries(files)) doc.registerFont(face, file);
  }

  width(text: string, { face, size }: Style): number {
    this.#doc.font(face).fontSize(size);
    return visualRuns(text).reduce((sum, run) => sum + this.#runWidth(run), 0);
  }

  /** Lines of at most this width; words that are longer are cut. */
  wrap(text: string, width: number, style: Style): string[] {
    const lines: string[] = [];
    let line = '';
    for (const word of text.split(' ').flatMap(long => this.#cut(long, width, style))) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (line !== '' && this.width(longer, style) > width) {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    return [...lines, line];
  }

  /** One line with its top at y. */
  draw(line: string, x: number, y: number, style: Style): void {
    if (!covered.test(line)) this.lacksLetters = true;
    this.#doc.font(style.face).fontSize(style.size).fillColor(style.color);
    let at = x;
    for (const run of visualRuns(line)) {
      this.#doc.text(run.text, at, y, run.rightToLeft ? SHAPED : PLAIN);
      at += this.#runWidth(run);
    }
  }

  lineHeight({ face, size }: Style): number {
    return this.#doc.font(face).fontSize(size).currentLineHeight() * 1.04;
  }

  #runWidth({ text, rightToLeft }: { readonly text: string; readonly rightToLeft: boolean }): number {
    return this.#doc.widthOfString(text, rightToLeft ? SHAPED : PLAIN);
  }

  #cut(word: string, width: number, style: Style): string[] {
    if (this.width(word, style) <= width) return [word];
    const parts: string[] = [];
    let part = '';
    for (const letter of word) {
      if (part !== '' && this.width(part + letter, style) > width) {
        parts.push(part);
        part = letter;
      } else part += letter;
    }
    return [...parts, part];
  }
}
