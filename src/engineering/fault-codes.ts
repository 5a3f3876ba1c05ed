import { type Given, take } from './checks.ts';
import { FMI_SOURCE, type Fmi, fmi } from './fmi.ts';
import { fail, ok, type Result, type Rule } from './result.ts';

/** A J1939 fault: which parameter, and how it fails. */
export interface FaultCode {
  readonly spn: number;
  readonly fmi: Fmi;
}

const RULE: Rule = {
  id: 'j1939-fault-code',
  source: FMI_SOURCE,
  validity: 'SPN 1 to 524286 (19 bits, all ones means not available), FMI 0 to 31',
};

const SPN = { min: 1, max: 0x7fffe, unit: '' };
const FMI = { min: 0, max: 31, unit: '' };

/** A fault from its two numbers, as the bus gives them. Issues: missing, not whole, out of range. */
export function faultCode(spnNumber: Given, fmiNumber: Given): Result<FaultCode> {
  const given = take({ spn: [spnNumber, SPN], fmi: [fmiNumber, FMI] });
  if (!given.ok) return given;
  const { spn } = given.values;
  const mode = fmi(given.values.fmi);
  if (!mode) return fail('notANumber', 'fmi', { given: given.values.fmi, allowed: 'a whole number' });
  if (!Number.isInteger(spn)) return fail('notANumber', 'spn', { given: spn, allowed: 'a whole number' });
  return ok({ spn, fmi: mode }, RULE);
}

const PAIR = /^\s*(?:spn)?[\s:]*(\d{1,6})(?:[\s/,.;:-]|fmi)+(\d{1,2})\s*$/i;

/**
 * A fault from digits as said or typed: "157 18", "157/18", "SPN 157 FMI 18". Something other than a digit must
 * part the two: in a single run of digits the FMI is `missing`, since it splits in several ways and is never guessed.
 */
export function readFaultCode(text: string): Result<FaultCode> {
  const allowed = 'an SPN and an FMI with something between them, such as 157/18';
  if (text.trim() === '') return fail('missing', 'fault', { allowed });
  const [, spnDigits, fmiDigits] = PAIR.exec(text) ?? [];
  if (spnDigits !== undefined && fmiDigits !== undefined) {
    return faultCode(Number(spnDigits), Number(fmiDigits));
  }
  const given = text.trim();
  return /^\d+$/.test(given)
    ? fail('missing', 'fmi', { given, allowed })
    : fail('notANumber', 'fault', { given, allowed });
}
