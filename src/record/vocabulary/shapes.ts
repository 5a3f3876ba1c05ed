import { z } from 'zod';

/** No gauge, code or share comes near this; larger numbers are no readings, and no plot could hold them. */
const LARGEST = 1e12;

export const text = z.string();
export const number = z.number().min(-LARGEST).max(LARGEST);
export const maybe = <T extends z.ZodType>(schema: T) => schema.nullish();

/**
 * A name out of a known set. Who writes may write only those, which the compiler holds; who reads takes any text, as
 * a record of another version may hold names that are no longer, or not yet, known.
 */
export const name = <Known extends string>(): z.ZodType<string, Known> =>
  z
    .custom<Known>(value => typeof value === 'string', 'Invalid input: expected string')
    .transform((known): string => known);

/** The names in a table, and no others: what a procedure is carried out with is never guessed. */
export const oneOf = <Known extends string>(table: Readonly<Record<Known, unknown>>) =>
  text.refine((value): value is Known => Object.hasOwn(table, value), 'is not a name of this version');
