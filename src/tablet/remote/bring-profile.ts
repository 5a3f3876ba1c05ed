import type { Profile } from '../../profile/schema.ts';
import { httpErrorSchema, profileAnswerSchema } from '../../server/protocol/index.ts';
import { words } from '../words/index.ts';

/**
 * Brings an engine profile to the laptop, for sessions of this bay, or by a supervisor of all bays.
 * @returns the name by which a session begins with it there
 * @throws Error with one sentence when it is refused, or nobody answers
 */
export async function bringProfile(token: string, profile: Profile): Promise<string> {
  const response = await fetch('/api/profiles', {
    method: 'POST',
    headers: { authorization: `Bearer ${token}`, 'content-type': 'application/json' },
    body: JSON.stringify(profile),
  }).catch(() => null);
  const body: unknown = await response?.json().catch(() => null);
  const answer = profileAnswerSchema.safeParse(body);
  if (response?.ok && answer.success) return answer.data.name;
  const refused = httpErrorSchema.safeParse(body);
  throw new Error(refused.success ? refused.data.error.sentence : words.nextJob.refused);
}
