/** How bad a failure mode is by its own account, where it says. */
export type FmiSeverity = 'most' | 'moderate' | 'least';

export interface Fmi {
  readonly number: number;
  readonly text: string;
  readonly severity?: FmiSeverity;
  /** Not assigned by the standard: what it means is not known. */
  readonly reserved?: true;
}

/** Source of the table below; the wording is our own. */
export const FMI_SOURCE =
  'SAE J1939-73, appendix A, failure mode identifiers 0 to 31 (as public lists give them)';

const TEXTS: readonly (readonly [text: string, severity?: FmiSeverity])[] = [
  ['reads too high', 'most'],
  ['reads too low', 'most'],
  ['signal jumps about or makes no sense'],
  ['voltage too high or shorted to supply'],
  ['voltage too low or shorted to ground'],
  ['current too low or wire broken'],
  ['current too high or shorted to ground'],
  ['moving part does not follow or is out of adjustment'],
  ['frequency, pulse width or period wrong'],
  ['message comes too often or too rarely'],
  ['changes too fast'],
  ['cause not known'],
  ['device or component bad'],
  ['out of calibration'],
  ['special instructions apply'],
  ['reads high', 'least'],
  ['reads high', 'moderate'],
  ['reads low', 'least'],
  ['reads low', 'moderate'],
  ['data from the network in error'],
  ['reading has drifted high'],
  ['reading has drifted low'],
];

const CONDITION_EXISTS = 31;

/** The failure mode behind an FMI from 0 to 31; `undefined` for anything else, which no FMI can be. */
export function fmi(number: number): Fmi | undefined {
  if (!Number.isInteger(number) || number < 0 || number > CONDITION_EXISTS) return undefined;
  if (number === CONDITION_EXISTS) return { number, text: 'condition exists' };
  const [text, severity] = TEXTS[number] ?? [];
  if (text === undefined) return { number, text: 'reserved, meaning not known', reserved: true };
  return severity === undefined ? { number, text } : { number, text, severity };
}
