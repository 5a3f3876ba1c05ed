import { reportPassSchema, type SessionRow, sessionListSchema } from '../../server/protocol/index.ts';

const bearer = (token: string) => ({ authorization: `Bearer ${token}` });

/**
 * The shop's sessions in which this text stands, the newest first.
 * @throws Error when the laptop does not answer as it should
 */
export async function pastSessions(token: string, find: string): Promise<readonly SessionRow[]> {
  const response = await fetch(`/api/sessions?${new URLSearchParams({ find })}`, { headers: bearer(token) });
  return sessionListSchema.parse(await response.json()).sessions;
}

/**
 * The address of a session's report, good for one visit.
 * @throws Error when the laptop does not answer as it should
 */
export async function reportOf(token: string, session: string): Promise<string> {
  const address = `/api/sessions/${encodeURIComponent(session)}/report`;
  const response = await fetch(address, { method: 'POST', headers: bearer(token) });
  return reportPassSchema.parse(await response.json()).path;
}
