/** What people do to the engine, at one moment. */
export interface Controls {
  readonly keyOn: boolean;
  readonly starter: boolean;
  readonly fuelling: boolean;
  /** Speed asked for with the pedal; null for idle. */
  readonly demandRpm: number | null;
  readonly pumpingByHand: boolean;
  readonly bleeding: boolean;
  readonly steering: boolean;
  /** Filled in up to the mark. */
  readonly oilFilled: boolean;
  readonly coolantFilled: boolean;
}

export const handsOff: Controls = {
  keyOn: false,
  starter: false,
  fuelling: true,
  demandRpm: null,
  pumpingByHand: false,
  bleeding: false,
  steering: false,
  oilFilled: false,
  coolantFilled: false,
};
