import { z } from 'zod';
import {
  httpErrorSchema,
  type PairAnswer,
  type PairRequest,
  PROTOCOL_VERSION,
  pairAnswerSchema,
} from '../../server/protocol/index.ts';
import { kept } from '../kept.ts';

/** Why this device could not be paired: one sentence. */
class PairingError extends Error {
  override readonly name = 'PairingError';
}

const KEY = 'first-fire-pairing';

/** Asks the laptop that the page came from. */
export async function pair(code: string, device: string): Promise<PairAnswer> {
  const request: PairRequest = { v: PROTOCOL_VERSION, code, device };
  const response = await fetch('/api/pair', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(request),
  }).catch(() => {
    throw new PairingError('The laptop does not answer; join its network, then try again.');
  });
  const body: unknown = await response.json().catch(() => null);
  const answer = pairAnswerSchema.safeParse(body);
  if (response.ok && answer.success) return answer.data;
  const error = httpErrorSchema.safeParse(body);
  throw new PairingError(
    error.success
      ? error.data.error.sentence
      : 'There is no laptop at this address; open the page from the address that it shows.',
  );
}

/** The pairing that this device had before. One that has run out may still stop a session: the laptop decides. */
export function loadPairing(): PairAnswer | null {
  try {
    return pairAnswerSchema.parse(JSON.parse(kept.read(KEY) ?? 'null'));
  } catch (cause) {
    if (cause instanceof z.ZodError || cause instanceof SyntaxError) return null;
    throw cause;
  }
}

export const keepPairing = (pairing: PairAnswer): void => kept.write(KEY, JSON.stringify(pairing));

export const forgetPairing = (): void => kept.remove(KEY);

const JOINED_KEY = 'first-fire-joined';

/** Whether this device is in its bay; kept, so that a page that is loaded anew comes back to it. */
export const keepJoined = (isJoined: boolean): void =>
  isJoined ? kept.write(JOINED_KEY, 'yes') : kept.remove(JOINED_KEY);

/** The pairing of the bay that nobody has left on this device. */
export const loadJoined = (): PairAnswer | null => (kept.read(JOINED_KEY) === null ? null : loadPairing());
