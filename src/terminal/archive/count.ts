/** A count with its noun: 1 session, 2 sessions. */
export const count = (amount: number, one: string): string => `${amount} ${amount === 1 ? one : `${one}s`}`;
