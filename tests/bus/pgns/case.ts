/** What one message has to be read as: by parameter, a value in its unit or why there is none. */
export interface PgnCase {
  readonly title: string;
  /** Data as hexadecimal bytes. */
  readonly data: string;
  readonly readings: Readonly<Record<string, number | 'notAvailable' | 'error' | 'parameterSpecific'>>;
}

/** One message with its cases; the runner asks each for one of all ones and one of errors. */
export interface PgnCases {
  readonly pgn: number;
  readonly cases: readonly PgnCase[];
}
