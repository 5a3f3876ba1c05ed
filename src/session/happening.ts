import type { Said } from '../../machines/context.ts';
import type { Person } from '../../machines/vocabulary.ts';
import type { Note } from '../record/vocabulary/index.ts';

/** What has happened, for faces that show it: a line said, a thing heard, a problem. */
export type Happening =
  | {
      readonly kind: 'said';
      readonly atMs: number;
      readonly line: Said['line'];
      readonly shown: string;
      readonly hazard: boolean;
      /** It asks something. */
      readonly asks: boolean;
      /** What of it answers, refuses, judges or tells, beside what is asked. */
      readonly inPassing: string;
    }
  | {
      readonly kind: 'heard';
      readonly atMs: number;
      readonly by: Person;
      readonly text: string;
      readonly counted: boolean;
    }
  | { readonly kind: 'noted'; readonly atMs: number; readonly note: Note }
  | { readonly kind: 'problem'; readonly sentence: string }
  /** What is to be shown for as long as entries are in memory only; null: all of them are on the disk again. */
  | { readonly kind: 'notKept'; readonly sentence: string | null };

/** Tells the faces; null: something else has changed that a face may show. */
export type Tell = (happening: Happening | null) => void;
