import type { z } from 'zod';
import { type ClientMessage, clientMessageSchema } from './client-messages.ts';
import { MAX_CLIENT_MESSAGE_BYTES, PROTOCOL_VERSION, type Refusal } from './common.ts';
import { type ServerMessage, serverMessageSchema } from './server-messages.ts';

export type Parsed<T> =
  | { readonly ok: true; readonly message: T }
  | { readonly ok: false; readonly refusal: Refusal };

const refuse = (code: Refusal['code'], sentence: string): Parsed<never> => ({
  ok: false,
  refusal: { code, sentence },
});

function isOfOtherVersion(data: unknown): boolean {
  if (typeof data !== 'object' || data === null || !('v' in data)) return false;
  return data.v !== PROTOCOL_VERSION;
}

function parse<T>(text: string, schema: z.ZodType<T>): Parsed<T> {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return refuse('malformed', 'The message is not JSON; reload the page.');
  }
  if (isOfOtherVersion(data))
    return refuse(
      'otherVersion',
      `The other side speaks another version than ${PROTOCOL_VERSION}; reload the page.`,
    );
  const parsed = schema.safeParse(data);
  if (parsed.success) return { ok: true, message: parsed.data };
  const [issue] = parsed.error.issues;
  const where = issue?.path.join('.') || 'the message';
  return refuse('malformed', `The message cannot be used: ${where}: ${issue?.message}. Reload the page.`);
}

/** Reads what a client sent. Never throws; what is wrong is one sentence. */
export function parseClientMessage(text: string): Parsed<ClientMessage> {
  // No character takes less than one byte: longer than this is too long in any case.
  if (text.length > MAX_CLIENT_MESSAGE_BYTES)
    return refuse('tooLong', `The message is longer than ${MAX_CLIENT_MESSAGE_BYTES} bytes.`);
  return parse(text, clientMessageSchema);
}

/** Reads what the server sent, in the client. */
export const parseServerMessage = (text: string): Parsed<ServerMessage> => parse(text, serverMessageSchema);
