import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatCandumpLine, parseCandumpLine } from '../../src/bus/formats/candump.ts';
import { j1939Frame } from '../../src/bus/frame.ts';
import { anyFrame } from './arbitraries.ts';

const HEAD = '(1700000000.123456) can0';

describe('A candump log line', () => {
  it('is read with time, interface, identifier and data', () => {
    expect(parseCandumpLine(`${HEAD} 0CF00400#FFFFFF6813FFFFFF`)).toEqual({
      kind: 'frame',
      interfaceName: 'can0',
      frame: j1939Frame(1700000000.123456, 0x0cf00400, [255, 255, 255, 0x68, 0x13, 255, 255, 255]),
    });
  });

  it('may have a direction behind the data, and any number of digits in its time', () => {
    expect(parseCandumpLine(`${HEAD} 18FEEE00#7D R`).kind).toBe('frame');
    expect(parseCandumpLine('(15.2000000838) vcan0 1CEC4900#1301')).toMatchObject({
      frame: { timeS: 15.2000000838 },
    });
  });

  it('is the same frame after writing and reading', () => {
    fc.assert(
      fc.property(anyFrame, frame => {
        const line = parseCandumpLine(formatCandumpLine(frame, 'can0'));
        expect(line).toEqual({ kind: 'frame', frame, interfaceName: 'can0' });
      }),
    );
  });

  it('that tells of the bus itself is no frame', () => {
    const error = (id: string, data: string) => parseCandumpLine(`${HEAD} ${id}#${data}`);
    expect(error('20000040', '0000000000000000')).toMatchObject({ kind: 'condition', condition: 'busOff' });
    expect(error('20000100', '0000000000000000')).toMatchObject({ condition: 'restarted' });
    expect(error('20000020', '0000000000000000')).toMatchObject({ condition: 'noAcknowledge' });
    expect(error('20000004', '0010000000000000')).toMatchObject({ condition: 'errorPassive' });
    expect(error('20000004', '0004000000000000')).toMatchObject({ condition: 'errorWarning' });
    expect(error('20000004', '0001000000000000')).toMatchObject({ condition: 'overrun' });
    expect(error('20000004', '0040000000000000')).toMatchObject({ condition: 'errorActive' });
    expect(error('20000004', '0000000000000000')).toMatchObject({ condition: 'otherError' });
    expect(error('20000008', '0000000000000000')).toMatchObject({ condition: 'otherError' });
  });

  it.each([
    ['', 'time in brackets'],
    ['0CF00400#00', 'time in brackets'],
    ['(17x0000000.123456) can0 0CF00400#00', 'time'],
    ['(1.) can0 0CF00400#00', 'time'],
    [`${HEAD} 0CF00400`, 'identifier and #'],
    [`${HEAD} 0CF0040#00`, '3 or 8'],
    [`${HEAD} 0CF0040G#00`, '3 or 8'],
    [`${HEAD} FFF#00`, 'too large'],
    [`${HEAD} 4CF00400#00`, 'too large'],
    [`${HEAD} 0CF00400##100`, 'CAN FD'],
    [`${HEAD} 0CF00400#0`, '0 to 8 whole bytes'],
    [`${HEAD} 0CF00400#001122334455667788`, '0 to 8 whole bytes'],
    [`${HEAD} 0CF00400#0G`, 'not hexadecimal'],
  ])('%j is told to be rubbish: %s', (line, reason) => {
    const parsed = parseCandumpLine(line);
    expect(parsed.kind === 'rubbish' && parsed.reason).toContain(reason);
  });

  it('of any text never throws', () => {
    fc.assert(fc.property(fc.string(), text => typeof parseCandumpLine(text).kind === 'string'));
    fc.assert(fc.property(fc.string(), text => typeof parseCandumpLine(`${HEAD} ${text}`).kind === 'string'));
  });

  it('is read by the programs of can-utils as it is read here', () => {
    const frames = fc.sample(anyFrame, { numRuns: 300, seed: 7 });
    const log = `${frames.map(frame => formatCandumpLine(frame, 'can0')).join('\n')}\n`;
    const asc = execFileSync('log2asc', ['can0'], { input: log, encoding: 'utf8' });
    const back = execFileSync('asc2log', { input: asc, encoding: 'utf8', stdio: ['pipe', 'pipe', 'ignore'] })
      .trim()
      .split('\n');
    expect(back).toHaveLength(frames.length);
    back.forEach((line, index) => {
      const parsed = parseCandumpLine(line.trim());
      const { id, extended, remote, data } = frames[index] ?? expect.fail('a frame too many');
      expect(parsed).toMatchObject({ kind: 'frame', frame: { id, extended, remote, data } });
    });
  });
});
