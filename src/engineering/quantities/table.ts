/** Named as in the calculations; the user's own units come in only where something is spoken or shown. */
export type SiUnit = 'degC' | 'm' | 'litre' | '%' | 'count' | 'V' | 'rpm' | 'kPa' | 's';

/** How the vehicle bus carries a quantity: SAE J1939-71 (from memory). */
export interface OnBus {
  /** Suspect parameters that carry it, best first. */
  readonly spns: readonly [number, ...number[]];
  /** Sent by the engine's own controller; else by whichever measures it. */
  readonly ofEngine?: true;
  /** Of the sensor (common practice), with one step of its parameter. */
  readonly tolerance: number;
  /** A change that is worth a line of the record. */
  readonly worth: number;
  /** Where an engine can well have more than its parameter can show: what it shows there stands for so much or more. */
  readonly endsAt?: number;
}

/** One thing that may be read off a gauge and spoken. */
interface QuantityFacts {
  readonly unit: SiUnit;
  /**
   * What can be read at all, on any engine and in any weather: beyond it a value was misheard or mistyped, even
   * where a rule has a limit on one side only.
   */
  readonly range: readonly [min: number, max: number];
  /** Where the range comes from. */
  readonly source: string;
  /** Of a value read off a gauge and spoken: half a division, parallax, rounding. Common practice, no published source. */
  readonly tolerance: number;
  /** Left out where no bus gives it. */
  readonly bus?: OnBus;
}

const PRACTICE = 'common practice, no published source';
const HEIGHTS = 'the lowest shore on land is at -430 m, the highest roads below 6000 m (from memory)';
const GLYCOL = 'below the lowest freezing point of any glycol mix, two thirds of it (from memory)';
/** At the battery, at the key switch, at a second battery. */
const BATTERY_SPNS = [168, 158, 444] as const;

/** Every quantity of the procedure: the one place for its unit, its range, its tolerance and its parameters. */
export const quantities = {
  ambientTemperature: {
    unit: 'degC',
    range: [-60, 60],
    source: PRACTICE,
    tolerance: 3,
    bus: { spns: [171], tolerance: 4 + 0.03125, worth: 2 },
  },
  coldestNight: { unit: 'degC', range: [-60, 60], source: PRACTICE, tolerance: 3 },
  altitude: { unit: 'm', range: [-500, 6000], source: HEIGHTS, tolerance: 50 },
  coolantFreezePoint: { unit: 'degC', range: [-70, 0], source: GLYCOL, tolerance: 2 },
  oilQuantity: { unit: 'litre', range: [0, 1000], source: PRACTICE, tolerance: 0.25 },
  fuelInTank: { unit: 'litre', range: [0, 5000], source: PRACTICE, tolerance: 10 },
  biodieselShare: { unit: '%', range: [0, 100], source: 'a share', tolerance: 1 },
  primerStrokes: { unit: 'count', range: [0, 1000], source: PRACTICE, tolerance: 5 },
  batteryVoltage: {
    unit: 'V',
    range: [0, 40],
    source: PRACTICE,
    tolerance: 0.2,
    bus: { spns: BATTERY_SPNS, tolerance: 0.2 + 0.05, worth: 0.3 },
  },
  chargingVoltage: {
    unit: 'V',
    range: [0, 40],
    source: PRACTICE,
    tolerance: 0.2,
    // At the alternator, or else what reaches the battery.
    bus: { spns: [167, ...BATTERY_SPNS], tolerance: 0.2 + 0.05, worth: 0.3 },
  },
  crankingVoltage: { unit: 'V', range: [0, 40], source: PRACTICE, tolerance: 0.2 },
  engineSpeed: {
    unit: 'rpm',
    range: [0, 6000],
    source: PRACTICE,
    // A pointer swings, and people round to fifty.
    tolerance: 50,
    bus: { spns: [190], ofEngine: true, tolerance: 10 + 0.125, worth: 50 },
  },
  oilPressure: {
    unit: 'kPa',
    range: [0, 2000],
    source: PRACTICE,
    tolerance: 35,
    bus: { spns: [100], ofEngine: true, tolerance: 20 + 4, worth: 20, endsAt: 1000 },
  },
  coolantTemperature: {
    unit: 'degC',
    range: [-60, 150],
    source: PRACTICE,
    tolerance: 4,
    bus: { spns: [110], ofEngine: true, tolerance: 2 + 1, worth: 2 },
  },
  suspectParameter: {
    unit: 'count',
    range: [0, 524_287],
    source: '19 bits: SAE J1939-73 (from memory)',
    tolerance: 0,
  },
  failureMode: {
    unit: 'count',
    range: [0, 31],
    source: '5 bits: SAE J1939-73 (from memory)',
    tolerance: 0,
  },
} as const satisfies Readonly<Record<string, QuantityFacts>>;

/** What may be read off a gauge and spoken. */
export type Quantity = keyof typeof quantities;

export const factsOf = (quantity: Quantity): QuantityFacts => quantities[quantity];

export const quantityUnits = Object.fromEntries(
  Object.entries(quantities).map(([name, { unit }]) => [name, unit]),
) as Readonly<Record<Quantity, SiUnit>>;

export const isQuantity = (name: string): name is Quantity => Object.hasOwn(quantities, name);

/** False for what is no number at all, and for what no gauge shows. */
export function canBeRead(quantity: Quantity, si: number): boolean {
  const [min, max] = quantities[quantity].range;
  return si >= min && si <= max;
}
