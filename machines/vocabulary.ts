import type { LineId } from '../prompts/types.ts';
import type { FuelPractice, GellingRisk } from '../src/engineering/fuel.ts';
import { quantityUnits, type SiUnit } from '../src/engineering/quantities/table.ts';
import type { Issue } from '../src/engineering/result.ts';
import type { Cause, Emergency, Gate, Person, Quantity, Via } from '../src/record/vocabulary/names.ts';

export type { Cause, Emergency, Gate, Person, Quantity, Via };

export { quantityUnits, type SiUnit };

/** Whether the engine stands, is turned by the starter, or runs while a step is done. */
export type EngineState = 'off' | 'cranking' | 'running';

/** Where the second person looks. */
export type InspectPoint =
  | 'anyLeak'
  | 'noise'
  | 'smoke'
  | 'fuelJoints'
  | 'coolantJoints'
  | 'oilJoints'
  | 'boots'
  | 'hiss'
  | 'smellAndSmoke';

/** A value for a blank in a prompt; quantities are put into the user's units by whoever speaks. */
export type PromptValue =
  | string
  | number
  | { readonly quantity: Quantity; readonly si: number }
  | { readonly unit: SiUnit; readonly si: number }
  /** With its unit for the eye; for the ear without: the question has named it. `asSaid`: as finely as it was typed. */
  | { readonly brief: Quantity; readonly si: number; readonly asSaid?: true }
  /** Without its unit, where it stands in a row. */
  | { readonly number: { readonly quantity: Quantity; readonly si: number } }
  | { readonly gelling: GellingRisk }
  /** Replies, causes, gates, people and steps are named by the language in use. */
  | { readonly reply: string }
  | { readonly cause: Cause }
  | { readonly gate: Gate }
  | { readonly person: Person }
  | { readonly step: string }
  /** A value of the engine profile by its path, and a part of the engine. */
  | { readonly valueName: string }
  | { readonly valueGroup: string }
  | { readonly quantityName: Quantity }
  | { readonly unitOf: Quantity }
  | { readonly issue: Issue }
  | { readonly glycol: 'ethylene' | 'propylene' }
  | { readonly oilGrade: string }
  | { readonly fuel: FuelPractice }
  | { readonly code: { readonly spn: number; readonly fmi: number } }
  /** What an FMI means. */
  | { readonly failureMode: number }
  /** A whole line inside another. */
  | { readonly line: LineId; readonly values: PromptValues }
  | { readonly phase: string }
  | {
      readonly limits: {
        readonly unit: string;
        readonly min?: number;
        readonly max?: number;
        readonly of?: Quantity;
      };
    }
  | { readonly point: InspectPoint }
  /** What a step asks for, in a few words among others. */
  | { readonly item: string; readonly values?: PromptValues }
  /** The words that stop everything: for the eye only, so that the tool does not stop itself. */
  | { readonly emergencyWords: 'shown' }
  /** Spoken one digit after the other. */
  | { readonly digits: number }
  /** Joined with commas, or as plain words one after the other. */
  | { readonly list: readonly PromptValue[]; readonly joined?: 'plain' };

export interface PromptValues {
  readonly [blank: string]: PromptValue;
}
