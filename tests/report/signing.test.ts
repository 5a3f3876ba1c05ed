import { describe, expect, test } from 'vitest';
import type { Recorded } from '../../src/record/vocabulary/index.ts';
import { signingOf } from '../../src/report/story/signing.ts';

type Body = Pick<Recorded, 'kind' | 'data'>;

const record = (...bodies: readonly Body[]): Recorded[] =>
  bodies.map((body, seq) => ({ seq, at: '', timeMs: seq * 1000, ...body }) as Recorded);

const command = (role: string): Body =>
  ({
    kind: 'command',
    data: { id: '1', device: 'd', name: `phone of the ${role}`, role, do: 'say' },
  }) as Body;
const event = (id: string, state: string): Body =>
  ({ kind: 'event', data: { type: 'reply', id, by: 'supervisor', via: 'touch', atMs: 0, state } }) as Body;
const passed: Body = { kind: 'passed', data: { step: 'signOff.sign', by: 'supervisor' } } as Body;

const asked = event('itemsNoted', 'signOff.sign.asking');
const said = event('iSign', 'signOff.sign.readingBack');
const confirmed = event('yes', 'signedOff');

describe('a signature in the record', () => {
  test('is theirs when both of its answers came from the device of the supervisor', () => {
    const entries = record(asked, command('supervisor'), said, command('supervisor'), confirmed, passed);
    expect(signingOf(entries)).toEqual({ timeMs: 5000, device: 'phone of the supervisor' });
  });

  test('is theirs when one touch was enough', () => {
    const entries = record(asked, command('supervisor'), event('iSign', 'signedOff'), passed);
    expect(signingOf(entries)?.device).toBe('phone of the supervisor');
  });

  test.each([
    ['said on the technician\u2019s device', [command('technician'), said, command('supervisor'), confirmed]],
    [
      'confirmed on the technician\u2019s device',
      [command('supervisor'), said, command('technician'), confirmed],
    ],
    ['said at the keys of the laptop', [said, confirmed]],
    ['said after something that the supervisor asked for', [command('supervisor'), asked, said, confirmed]],
  ])('is not proved when it was %s', (_, bodies) => {
    expect(signingOf(record(asked, ...bodies, passed))).toEqual({ timeMs: expect.any(Number) });
  });

  test('is none where nobody signed', () => {
    expect(signingOf(record(asked, said))).toBe(null);
  });
});
