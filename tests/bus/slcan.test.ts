import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseSlcan, SLCAN_BELL, slcanListen } from '../../src/bus/formats/slcan.ts';
import { anyFrame } from './arbitraries.ts';
import { slcanText } from './slcan-text.ts';

describe('A message of a serial adapter', () => {
  it('is a frame when it begins with t or T', () => {
    expect(parseSlcan('T0CF004008FFFFFF6813FFFFFF', 5)).toMatchObject({
      kind: 'frame',
      frame: {
        timeS: 5,
        id: 0x0cf00400,
        extended: true,
        data: Uint8Array.of(255, 255, 255, 0x68, 0x13, 255, 255, 255),
      },
    });
    expect(parseSlcan('t12320102', 5)).toMatchObject({
      frame: { id: 0x123, extended: false, remote: false },
    });
  });

  it('may have the time of the adapter behind the data', () => {
    expect(parseSlcan('T18FEEE0017D1A2B', 5)).toMatchObject({
      frame: { timeS: 5, data: Uint8Array.of(0x7d) },
    });
  });

  it('is the same frame after writing and reading', () => {
    fc.assert(
      fc.property(anyFrame, frame => {
        const message = slcanText(frame);
        expect(message.endsWith('\r')).toBe(true);
        expect(parseSlcan(message.slice(0, -1), frame.timeS)).toEqual({ kind: 'frame', frame });
      }),
    );
  });

  it('is an answer to a command when it is empty or a bell', () => {
    expect(parseSlcan('', 0).kind).toBe('done');
    expect(parseSlcan('z', 0).kind).toBe('done');
    expect(parseSlcan('Z', 0).kind).toBe('done');
    expect(parseSlcan(SLCAN_BELL, 0).kind).toBe('refused');
    expect(parseSlcan('V1013', 0)).toEqual({ kind: 'version', text: 'V1013' });
  });

  it('tells each condition of the bus once', () => {
    expect(parseSlcan('F00', 0)).toEqual({ kind: 'status', conditions: [] });
    expect(parseSlcan('FA9', 0)).toEqual({
      kind: 'status',
      conditions: ['overrun', 'errorPassive', 'otherError'],
    });
    expect(parseSlcan('F04', 0)).toEqual({ kind: 'status', conditions: ['errorWarning'] });
  });

  it.each([
    ['T0CF00', '8 hexadecimal digits'],
    ['T0CG004008FFFFFF6813FFFFFF', '8 hexadecimal digits'],
    ['TFFFFFFFF0', 'too large'],
    ['tFFF0', 'too large'],
    ['T0CF004009FF', '0 to 8'],
    ['T0CF00400xFF', '0 to 8'],
    ['T0CF004002FF', '2 bytes that it announces'],
    ['T0CF004001FG', 'not hexadecimal'],
    ['T0CF004001FF12G4', 'not hexadecimal'],
    ['F0', 'two hexadecimal digits'],
    ['FXY', 'two hexadecimal digits'],
    ['zz', 'answer to a sent frame'],
    ['Hello', 'no letter'],
  ])('%j is told to be rubbish: %s', (text, reason) => {
    const message = parseSlcan(text, 0);
    expect(message.kind === 'rubbish' && message.reason).toContain(reason);
  });

  it('of any text never throws', () => {
    fc.assert(
      fc.property(fc.constantFrom('', 'T', 't', 'R', 'r', 'F', 'z'), fc.string(), (head, text) => {
        expect(parseSlcan(head + text, 0).kind).toBeTypeOf('string');
      }),
    );
  });

  it('opens the bus to listen only, at the rate that is asked for', () => {
    expect(slcanListen(250_000)).toEqual(['C\r', 'S5\r', 'L\r']);
    expect(slcanListen(500_000)).toEqual(['C\r', 'S6\r', 'L\r']);
  });
});
