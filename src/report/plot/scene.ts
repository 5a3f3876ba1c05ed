/** What a stroke or an area means; each face picks the colour. */
export type Ink =
  | 'axis'
  | 'grid'
  | 'label'
  | 'reading'
  | 'bad'
  | 'limit'
  | 'beyond'
  | 'bandA'
  | 'bandB'
  | 'phase'
  | 'engine'
  | 'crank'
  | 'stop'
  | 'drill'
  | 'held';

/** Lengths in points, origin at the top left. */
export type Shape =
  | {
      readonly kind: 'box';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly ink: Ink;
    }
  | {
      readonly kind: 'line';
      readonly points: readonly (readonly [number, number])[];
      readonly ink: Ink;
      readonly width: number;
      readonly dashed?: boolean;
    }
  | {
      readonly kind: 'dot';
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly ink: Ink;
    }
  /** A filled triangle that points down at (x, y). */
  | {
      readonly kind: 'flag';
      readonly x: number;
      readonly y: number;
      readonly size: number;
      readonly ink: Ink;
    }
  | {
      readonly kind: 'text';
      readonly x: number;
      /** Of the base line. */
      readonly y: number;
      readonly text: string;
      readonly size: number;
      readonly ink: Ink;
      readonly anchor?: 'middle' | 'end';
    };

/** A drawing without any idea of where it will be drawn. */
export interface Scene {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}
