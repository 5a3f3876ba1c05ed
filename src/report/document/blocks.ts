import type { LanguageCode } from '../../../prompts/types.ts';
import type { Scene } from '../plot/scene.ts';

/** good and bad are always said in words as well: colour alone tells nothing on a black-and-white print. */
export type Tone = 'good' | 'bad' | 'warn' | 'muted';

export interface Cell {
  readonly text: string;
  readonly tone?: Tone;
  readonly strong?: boolean;
  /** A second, smaller line. */
  readonly note?: string;
}

/** One line of a list; with boxes, ticked or not. */
export interface Item extends Cell {
  readonly ticked?: boolean;
}

export interface Column {
  readonly title: string;
  /** Share of the width; the shares of a table add up to 1. */
  readonly width: number;
  readonly align?: 'right';
}

export type Row =
  | { readonly kind: 'cells'; readonly cells: readonly Cell[] }
  /** A row across the table that heads those below it. */
  | { readonly kind: 'group'; readonly title: Cell; readonly right?: Cell; readonly detail?: string };

export interface Figure {
  readonly title: string;
  /** What the figure shows, in words, for who cannot see it. */
  readonly alt: string;
  readonly scene: Scene;
}

/** What a report is made of; each face of it (HTML, PDF) knows how to draw these and nothing else. */
export type Block =
  | { readonly type: 'banner'; readonly tone: Tone; readonly text: string; readonly detail?: string }
  | { readonly type: 'title'; readonly text: string; readonly note: string }
  | { readonly type: 'lead'; readonly tone: Tone; readonly text: string }
  | { readonly type: 'section'; readonly title: string; readonly note?: string }
  | { readonly type: 'text'; readonly text: string; readonly tone?: Tone }
  | {
      readonly type: 'facts';
      readonly rows: readonly { readonly label: string; readonly value: Cell }[];
    }
  | { readonly type: 'table'; readonly columns: readonly Column[]; readonly rows: readonly Row[] }
  | { readonly type: 'list'; readonly items: readonly Item[]; readonly boxes?: boolean }
  | { readonly type: 'figures'; readonly perRow: 1 | 2; readonly figures: readonly Figure[] }
  /** Put away behind its summary: opened by who wants it on a screen, its summary alone on paper. */
  | { readonly type: 'folded'; readonly summary: string; readonly blocks: readonly Block[] }
  | {
      readonly type: 'signatures';
      readonly lines: readonly { readonly role: string; readonly name: string; readonly note: string }[];
    }
  | { readonly type: 'hash'; readonly label: string; readonly hash: string };

export interface ReportDocument {
  readonly language: LanguageCode;
  /** For the title of the file and the head of each page. */
  readonly title: string;
  /** Said at the head of every page when the record is not to be trusted. */
  readonly warning?: string;
  /** At the foot of every page. */
  readonly footer: string;
  readonly paper: 'A4' | 'LETTER';
  readonly blocks: readonly Block[];
}
