import { tenKelvinS } from '../../engineering/warm-up-pace.ts';
import type { Profile } from '../../profile/schema.ts';
import type { Told } from '../../record/vocabulary/index.ts';

/** One figure of a start that may be held against the same of other starts. */
interface ComparedFigure {
  /** Where it is measured. */
  readonly kind: 'verdict' | 'inTime' | 'warmUp';
  readonly step: string;
  readonly unit: 's' | 'V' | 'rpm';
  /** What two measurements of the same may differ by, in `unit`: common practice, no published source. */
  readonly resolution: number;
}

/** The figures by which starts of one engine are alike or not. The names stand in records and archives. */
export const comparedFigures = {
  'oil-pressure-time': { kind: 'inTime', step: 'firstFire.oilPressure', unit: 's', resolution: 1.5 },
  'cranking-voltage': { kind: 'verdict', step: 'noFuelCrank.voltage', unit: 'V', resolution: 0.3 },
  'idle-speed': { kind: 'verdict', step: 'checks.idle', unit: 'rpm', resolution: 50 },
  'charging-voltage': { kind: 'verdict', step: 'checks.charging', unit: 'V', resolution: 0.3 },
  /** Seconds that the coolant takes for 10 K. */
  'warm-up-pace': { kind: 'warmUp', step: 'warmUp.watch', unit: 's', resolution: 10 },
} as const satisfies Readonly<Record<string, ComparedFigure>>;

export type FigureName = keyof typeof comparedFigures;

export const isFigureName = (name: string): name is FigureName => Object.hasOwn(comparedFigures, name);

export const figureNames = Object.keys(comparedFigures).filter(isFigureName);

export interface Figure {
  readonly figure: FigureName;
  /** In the unit of the figure. */
  readonly value: number;
}

/** Notes that may hold a figure. */
const noted = ['verdict', 'inTime', 'passed'] as const;
type Noted = Extract<Told, { readonly kind: (typeof noted)[number] }>;

/** Whether a note may hold a figure. */
export const mayHoldFigure = <T extends { readonly kind: Told['kind'] }>(
  note: T,
): note is Extract<T, Noted> => noted.some(kind => kind === note.kind);

/** Reads the figures out of what a session notes, in its order. */
export class FigureReader {
  readonly #opensC: number | undefined;
  #warmingUp: { readonly timeS: number; readonly value: number }[] = [];
  #warmedUp = false;

  /** @param profile null where it is not known: then nothing is told of the warm-up */
  constructor(profile: Profile | null) {
    this.#opensC = profile?.thermostat.opensC;
  }

  /** @param timeMs session time */
  take({ kind, data }: Noted, timeMs: number): Figure | undefined {
    const { step } = data;
    const isWarmUp = step === comparedFigures['warm-up-pace'].step;
    // That the thermostat has opened may be felt at the hose, and not read.
    if (kind === 'passed') return isWarmUp ? this.#pace() : undefined;
    if (kind === 'verdict' && isWarmUp) return this.#warmUp(data.value, timeMs / 1000);
    const figure = figureNames.find(
      name => comparedFigures[name].kind === kind && comparedFigures[name].step === step,
    );
    const value = kind === 'verdict' ? data.value : data.seconds;
    return figure === undefined || value == null || !Number.isFinite(value) ? undefined : { figure, value };
  }

  #warmUp(coolantC: number | null | undefined, timeS: number): Figure | undefined {
    if (this.#opensC === undefined || coolantC == null || this.#warmedUp) return undefined;
    // A start that began anew warms up anew.
    const before = this.#warmingUp.at(-1);
    if (before && (timeS < before.timeS || coolantC < before.value - COOLED_K)) this.#warmingUp = [];
    this.#warmingUp.push({ timeS, value: coolantC });
    return coolantC < this.#opensC ? undefined : this.#pace();
  }

  /** Told once, as soon as the coolant has come to where the thermostat opens. */
  #pace(): Figure | undefined {
    if (this.#opensC === undefined || this.#warmedUp) return undefined;
    this.#warmedUp = true;
    const pace = tenKelvinS(this.#warmingUp, this.#opensC);
    return pace.ok ? { figure: 'warm-up-pace', value: pace.value } : undefined;
  }
}

/** Coolant that is so much colder than before has stood meanwhile. */
const COOLED_K = 10;
