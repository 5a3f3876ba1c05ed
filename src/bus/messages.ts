/** Which message carries a parameter, and how often it is repeated. */
interface MessageDefinition {
  readonly pgn: number;
  readonly name: string;
  /** Seconds between two of them in normal running; undefined for those sent only on request. */
  readonly repeatS: number | undefined;
}

/** Repetition by SAE J1939-71 (from memory); of those that follow engine speed, the slowest. */
export const MESSAGES: readonly MessageDefinition[] = [
  { pgn: 61443, name: 'Electronic engine controller 2', repeatS: 0.05 },
  { pgn: 61444, name: 'Electronic engine controller 1', repeatS: 0.1 },
  { pgn: 65165, name: 'Vehicle electrical power 2', repeatS: 1 },
  { pgn: 65243, name: 'Engine fluid level and pressure 2', repeatS: 0.5 },
  { pgn: 65251, name: 'Engine configuration 1', repeatS: 5 },
  { pgn: 65252, name: 'Shutdown', repeatS: 1 },
  { pgn: 65253, name: 'Engine hours and revolutions', repeatS: undefined },
  { pgn: 65262, name: 'Engine temperature 1', repeatS: 1 },
  { pgn: 65263, name: 'Engine fluid level and pressure 1', repeatS: 0.5 },
  { pgn: 65266, name: 'Fuel economy', repeatS: 0.1 },
  { pgn: 65269, name: 'Ambient conditions', repeatS: 1 },
  { pgn: 65270, name: 'Inlet and exhaust conditions 1', repeatS: 0.5 },
  { pgn: 65271, name: 'Vehicle electrical power 1', repeatS: 1 },
  { pgn: 65276, name: 'Dash display', repeatS: 1 },
  { pgn: 65279, name: 'Water in fuel indicator', repeatS: 10 },
];

/** Three repetitions missed, and never less than a second, make a reading too old to act on. */
export const staleAfterS = (repeatS: number): number => Math.max(1, 3 * repeatS);
