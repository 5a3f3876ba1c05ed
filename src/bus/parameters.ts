/** Units that readings come in. */
export type BusUnit = 'rpm' | 'degC' | 'kPa' | 'V' | 'A' | 'percent' | 'h' | 'litrePerHour' | 'state';

/** How one parameter lies in its message and what a bit of it is worth. */
export interface ParameterDefinition {
  /** Suspect parameter number. */
  readonly spn: number;
  readonly pgn: number;
  readonly name: string;
  /** Byte in which it begins, counted from 1 as in the standard; several bytes come lowest first. */
  readonly startByte: number;
  /** Bit in that byte at which it begins, 1 is the lowest; 1 for whole bytes. */
  readonly startBit: number;
  /** 2, 4, 8, 16 or 32. */
  readonly bits: number;
  /** value = raw * scale + offset, in `unit`. */
  readonly scale: number;
  readonly offset: number;
  readonly unit: BusUnit;
  /** Largest raw number with a meaning, where that is less than the width allows. */
  readonly largestRaw?: number;
}

type Row = readonly [
  spn: number,
  pgn: number,
  name: string,
  startByte: number,
  bits: number,
  scale: number,
  offset: number,
  unit: BusUnit,
];

/** kPa for each 1/256 MPa. */
const RAIL_KPA = 1000 / 256;

/**
 * Positions and scales by SAE J1939-71 (from memory). Scales are checked against published frames and positions
 * against a published table in tests/bus/published; which rows that covers is said there.
 */
const WHOLE_BYTES: readonly Row[] = [
  [190, 61444, 'engineSpeed', 4, 16, 0.125, 0, 'rpm'],
  [91, 61443, 'acceleratorPedal', 2, 8, 0.4, 0, 'percent'],
  [92, 61443, 'engineLoad', 3, 8, 1, 0, 'percent'],
  [110, 65262, 'coolantTemperature', 1, 8, 1, -40, 'degC'],
  [174, 65262, 'fuelTemperature', 2, 8, 1, -40, 'degC'],
  [175, 65262, 'oilTemperature', 3, 16, 0.03125, -273, 'degC'],
  [94, 65263, 'fuelDeliveryPressure', 1, 8, 4, 0, 'kPa'],
  [98, 65263, 'oilLevel', 3, 8, 0.4, 0, 'percent'],
  [100, 65263, 'oilPressure', 4, 8, 4, 0, 'kPa'],
  [101, 65263, 'crankcasePressure', 5, 16, 0.0078125, -250, 'kPa'],
  [109, 65263, 'coolantPressure', 7, 8, 2, 0, 'kPa'],
  [111, 65263, 'coolantLevel', 8, 8, 0.4, 0, 'percent'],
  [157, 65243, 'railPressure', 3, 16, RAIL_KPA, 0, 'kPa'],
  [102, 65270, 'boostPressure', 2, 8, 2, 0, 'kPa'],
  [105, 65270, 'intakeTemperature', 3, 8, 1, -40, 'degC'],
  [106, 65270, 'intakePressure', 4, 8, 2, 0, 'kPa'],
  [114, 65271, 'batteryCurrent', 1, 8, 1, -125, 'A'],
  [115, 65271, 'alternatorCurrent', 2, 8, 1, 0, 'A'],
  [167, 65271, 'chargingVoltage', 3, 16, 0.05, 0, 'V'],
  [168, 65271, 'batteryVoltage', 5, 16, 0.05, 0, 'V'],
  [158, 65271, 'keySwitchVoltage', 7, 16, 0.05, 0, 'V'],
  [444, 65165, 'secondBatteryVoltage', 1, 16, 0.05, 0, 'V'],
  [108, 65269, 'barometricPressure', 1, 8, 0.5, 0, 'kPa'],
  [171, 65269, 'ambientTemperature', 4, 16, 0.03125, -273, 'degC'],
  [172, 65269, 'airInletTemperature', 6, 8, 1, -40, 'degC'],
  [247, 65253, 'engineHours', 1, 32, 0.05, 0, 'h'],
  [183, 65266, 'fuelRate', 1, 16, 0.05, 0, 'litrePerHour'],
  [96, 65276, 'fuelLevel', 2, 8, 0.4, 0, 'percent'],
  [38, 65276, 'secondFuelLevel', 7, 8, 0.4, 0, 'percent'],
  [188, 65251, 'idleSpeedSetting', 1, 16, 0.125, 0, 'rpm'],
];

const state = (
  spn: number,
  pgn: number,
  name: string,
  startByte: number,
  startBit: number,
  bits: number,
): ParameterDefinition => ({ spn, pgn, name, startByte, startBit, bits, scale: 1, offset: 0, unit: 'state' });

export const PARAMETERS: readonly ParameterDefinition[] = [
  ...WHOLE_BYTES.map(
    ([spn, pgn, name, startByte, bits, scale, offset, unit]): ParameterDefinition => ({
      spn,
      pgn,
      name,
      startByte,
      startBit: 1,
      bits,
      scale,
      offset,
      unit,
    }),
  ),
  state(97, 65279, 'waterInFuel', 1, 1, 2),
  state(1081, 65252, 'waitToStartLamp', 4, 1, 2),
  state(1110, 65252, 'protectionHasShutDown', 5, 1, 2),
  state(1109, 65252, 'protectionNearShutdown', 5, 3, 2),
  // 9 to 11 are reserved, 13 is an older way to say error.
  { ...state(1675, 61444, 'starterMode', 7, 1, 4), largestRaw: 12 },
];
