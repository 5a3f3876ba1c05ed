import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  MAX_CLIENT_MESSAGE_BYTES,
  parseClientMessage,
  parseServerMessage,
} from '../../../src/server/protocol/index.ts';

const stop = { type: 'command', id: randomUUID(), deed: { do: 'stop' } };
const codeOf = (text: string) => {
  const parsed = parseClientMessage(text);
  return parsed.ok ? 'ok' : parsed.refusal.code;
};

describe('Messages of a client', () => {
  test('a command that is whole is read', () => {
    expect(parseClientMessage(JSON.stringify(stop))).toEqual({ ok: true, message: stop });
  });

  test('one that is not JSON, of another shape, of another version or too long is told apart', () => {
    expect(codeOf('stop')).toBe('malformed');
    expect(codeOf('{"type":"start"}')).toBe('malformed');
    expect(codeOf('{"type":"hello","v":1,"token":"x"}')).toBe('otherVersion');
    expect(codeOf(' '.repeat(MAX_CLIENT_MESSAGE_BYTES + 1))).toBe('tooLong');
  });

  test('members that nobody knows, a missing id and a confidence above one are refused', () => {
    expect(codeOf(JSON.stringify({ ...stop, role: 'technician' }))).toBe('malformed');
    expect(codeOf(JSON.stringify({ ...stop, id: 'again' }))).toBe('malformed');
    const heard = { kind: 'reply', id: 'yes', text: 'yes', confidence: 1.2 };
    expect(codeOf(JSON.stringify({ ...stop, deed: { do: 'heard', turn: 'a', heard } }))).toBe('malformed');
  });

  test('nothing that can be sent makes the reader throw, and every refusal is a sentence', () => {
    const anything = fc.oneof(
      fc.string(),
      fc.json(),
      fc.jsonValue().map(value => JSON.stringify({ ...stop, deed: value })),
    );
    fc.assert(
      fc.property(anything, text => {
        const parsed = parseClientMessage(text);
        if (!parsed.ok) expect(parsed.refusal.sentence).toMatch(/\.$/);
      }),
    );
  });

  test('the reader of a page refuses the same way', () => {
    expect(parseServerMessage('{"type":"ack","id":1}').ok).toBe(false);
    expect(parseServerMessage(JSON.stringify({ type: 'ack', id: stop.id, again: false })).ok).toBe(true);
  });
});
