import { colors, toneColors } from './palette.ts';
import type { Doc, Style, TextSetter } from './text.ts';

export const MARGIN = 40;
const HEAD = 20;
const FOOT = 26;

interface Running {
  readonly title: string;
  readonly warning: string | undefined;
  readonly footer: string;
  pageOf(page: number, of: number): string;
}

/** The pages of a report and the place on them where the next thing goes. */
export class Sheet {
  readonly doc: Doc;
  readonly text: TextSetter;
  readonly left = MARGIN;
  readonly #scale: number;
  y = MARGIN;

  /** @param scale how large everything is drawn, 1 as it is */
  constructor(doc: Doc, text: TextSetter, scale = 1) {
    this.doc = doc;
    this.text = text;
    this.#scale = scale;
    this.#addPage();
  }

  #addPage(): void {
    this.doc.addPage();
    this.doc.scale(this.#scale);
  }

  get width(): number {
    return this.doc.page.width / this.#scale - 2 * MARGIN;
  }

  get #height(): number {
    return this.doc.page.height / this.#scale;
  }

  get #bottom(): number {
    return this.#height - MARGIN - FOOT;
  }

  /** Share of this page that is used. */
  get lastFilled(): number {
    return (this.y - MARGIN) / (this.#bottom - MARGIN);
  }

  /** Height of a page that things may fill. */
  get pageHeight(): number {
    return this.#bottom - MARGIN - HEAD;
  }

  /** Goes on to a new page unless so much height is left; true when it did. */
  ensure(height: number): boolean {
    if (this.y + height <= this.#bottom) return false;
    this.#addPage();
    this.y = MARGIN + HEAD;
    return true;
  }

  /** Wrapped text from here on, over pages if need be. */
  paragraph(own: string, style: Style, left = this.left, width = this.width): void {
    const height = this.text.lineHeight(style);
    for (const line of this.text.wrap(own, width, style)) {
      this.ensure(height);
      this.text.draw(line, left, this.y, style);
      this.y += height;
    }
  }

  /** When all pages are there: the title and any warning at their heads, hash and number at their feet. */
  finish({ title, warning, footer, pageOf }: Running): void {
    const { start, count } = this.doc.bufferedPageRange();
    for (let page = start; page < start + count; page += 1) {
      this.doc.switchToPage(page);
      const plain: Style = { face: 'plain', size: 6.5, color: colors.muted };
      const foot = this.#height - MARGIN - 8;
      this.text.draw(footer, this.left, foot, plain);
      const number = pageOf(page - start + 1, count);
      this.text.draw(number, this.left + this.width - this.text.width(number, plain), foot, plain);
      if (page === start) continue;
      if (warning === undefined) this.#headLine(title, plain);
      else this.#headLine(warning, { face: 'bold', size: 8, color: toneColors.bad });
    }
  }

  #headLine(own: string, style: Style): void {
    const [first = ''] = this.text.wrap(own, this.width, style);
    this.text.draw(first, this.left, MARGIN, style);
    const y = MARGIN + 13;
    this.doc
      .moveTo(this.left, y)
      .lineTo(this.left + this.width, y)
      .lineWidth(0.5)
      .stroke(colors.rule);
  }
}
