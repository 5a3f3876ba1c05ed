import { httpErrorSchema, type UploadAnswer, uploadAnswerSchema } from '../../server/protocol/index.ts';
import { allRecords, linesOf, noteOn } from '../record/data-base.ts';
import { asFile } from '../record/log-in-browser.ts';
import { words } from '../words/index.ts';

/** Sends one record as it is. Sent again it changes nothing. */
async function send(token: string, lines: readonly string[]): Promise<UploadAnswer | string> {
  try {
    const response = await fetch('/api/upload', {
      method: 'POST',
      headers: { authorization: `Bearer ${token}`, 'content-type': 'application/x-ndjson' },
      body: asFile(lines),
    });
    const body: unknown = await response.json();
    const answer = uploadAnswerSchema.safeParse(body);
    if (response.ok && answer.success) return answer.data;
    const refused = httpErrorSchema.safeParse(body);
    return refused.success ? refused.data.error.sentence : words.sending.noAnswer;
  } catch {
    return words.sending.noAnswer;
  }
}

/**
 * Sends the laptop every record of this device that it does not have yet; what it does not take stays to be sent.
 * @returns what has become of them, in sentences; empty when there was nothing to send
 */
export async function sendRecords(dataBase: IDBDatabase, token: string): Promise<string> {
  const kept: string[] = [];
  const marked: string[] = [];
  const doubted: string[] = [];
  const refusals = new Set<string>();
  let left = 0;
  for (const { id, sent: before, copyOf } of await allRecords(dataBase)) {
    // A copy of its own session is nothing that the laptop would have to be sent.
    if (before || copyOf) continue;
    const lines = await linesOf(dataBase, id);
    const answer = await send(
      token,
      lines.map(({ line }) => line),
    );
    if (typeof answer === 'string') {
      refusals.add(answer);
      left += 1;
      continue;
    }
    const sent = !answer.verified ? 'marked' : answer.confirmed ? 'kept' : 'doubted';
    await noteOn(dataBase, id, { sent });
    ({ kept, marked, doubted })[sent].push(id);
  }
  return [
    ...(kept.length > 0 ? [words.sending.kept(kept.length)] : []),
    ...(marked.length > 0 ? [words.sending.marked(marked)] : []),
    ...(doubted.length > 0 ? [words.sending.doubted(doubted)] : []),
    ...(left > 0 ? [words.sending.left(left), ...refusals] : []),
  ].join(' ');
}
