import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodeCanId } from '../../src/bus/can-id.ts';
import { formatDiagnostics } from '../../src/bus/diagnostics/dm1.ts';
import { parseLamps } from '../../src/bus/diagnostics/lamps.ts';
import { j1939Frame } from '../../src/bus/frame.ts';
import { anyFrame } from './arbitraries.ts';
import { hexData } from './hex-data.ts';
import { listen } from './listen.ts';
import { announce, packetsOf } from './transport-frames.ts';

const EEC1 = 0x0cf00400;

describe('The decoder', () => {
  it('reads each parameter of a message in its table, with sender and time', () => {
    const { decoder, readings } = listen();
    decoder.push(j1939Frame(7, EEC1, hexData('FF FF FF 50 14 FF F3 FF')));
    expect(readings).toEqual([
      { kind: 'value', spn: 190, name: 'engineSpeed', source: 0, timeS: 7, value: 650, unit: 'rpm' },
      { kind: 'value', spn: 1675, name: 'starterMode', source: 0, timeS: 7, value: 3, unit: 'state' },
    ]);
  });

  it('passes over other groups, standard frames and remote requests', () => {
    const { decoder, readings, diagnostics, failures } = listen();
    decoder.push(j1939Frame(0, 0x18f00900, hexData('0000000000000000')));
    decoder.push({ ...j1939Frame(0, 0x400, hexData('0000000000000000')), extended: false });
    decoder.push({ ...j1939Frame(0, EEC1, []), remote: true });
    expect([readings, diagnostics, failures]).toEqual([[], [], []]);
  });

  it('reads the faults of a long message when it is whole', () => {
    const { decoder, diagnostics } = listen();
    const faults = [
      { spn: 157, fmi: 18, occurrences: 1 },
      { spn: 100, fmi: 1, occurrences: 2 },
    ];
    const sent = {
      source: 0,
      destination: 255,
      pgn: 65226,
      data: formatDiagnostics(parseLamps(4, 255), faults),
    };
    for (const frame of [announce(sent), ...packetsOf(sent)]) decoder.push(frame);
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]).toMatchObject({ lamps: { amberWarning: { status: 'on' } }, complete: true });
    expect(diagnostics[0]?.faults.map(({ spn, fmi }) => ({ spn, fmi }))).toEqual(
      faults.map(({ spn, fmi }) => ({ spn: { kind: 'known', spn }, fmi })),
    );
  });

  it('reads parameters of a long message too', () => {
    const { decoder, readings } = listen();
    const data = new Uint8Array(39).fill(255);
    data.set([0xe0, 0x15]);
    const sent = { source: 0, destination: 255, pgn: 65251, data };
    for (const frame of [announce(sent), ...packetsOf(sent)]) decoder.push(frame);
    expect(readings).toMatchObject([{ name: 'idleSpeedSetting', value: 700 }]);
  });

  it('tells of a long message that is lost, once', () => {
    const { decoder, failures } = listen();
    decoder.push(announce({ source: 3, destination: 255, pgn: 65226, data: new Uint8Array(20) }));
    decoder.tick(0.5);
    expect(failures).toEqual([]);
    decoder.tick(1);
    decoder.tick(2);
    expect(failures).toMatchObject([{ reason: 'timeout', pgn: 65226, source: 3 }]);
  });

  it('takes what is said of old senders by their address', () => {
    const { decoder, diagnostics } = listen({ oldConversion: source => (source === 0 ? 1 : undefined) });
    const data = hexData('04 FF 00 97 03 8A FF FF');
    decoder.push(j1939Frame(0, encodeCanId({ priority: 6, pgn: 65226, source: 0, destination: 255 }), data));
    decoder.push(j1939Frame(0, encodeCanId({ priority: 6, pgn: 65226, source: 3, destination: 255 }), data));
    expect(diagnostics.map(({ faults }) => faults[0]?.spn.kind)).toEqual(['known', 'oneOf']);
    expect(diagnostics[0]?.faults[0]?.spn).toEqual({ kind: 'known', spn: 1208 });
  });

  it('never throws, and never makes a number of what is absent, whatever the frames', () => {
    const known = fc
      .tuple(fc.constantFrom(61444, 65226, 65227, 65262, 65271, 0xec00, 0xeb00), fc.nat({ max: 3 }), anyFrame)
      .map(([pgn, source, frame]) => ({
        ...frame,
        extended: true,
        id: encodeCanId({ priority: 6, pgn, source, destination: 255 }),
      }));
    fc.assert(
      fc.property(fc.array(fc.oneof(anyFrame, known), { maxLength: 60 }), frames => {
        const { decoder, readings } = listen();
        for (const frame of frames) {
          decoder.push(frame);
          decoder.tick(frame.timeS);
        }
        for (const reading of readings)
          if (reading.kind === 'value') expect(Number.isFinite(reading.value)).toBe(true);
          else expect('value' in reading).toBe(false);
      }),
      { numRuns: 500 },
    );
  });
});
