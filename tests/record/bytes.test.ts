import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import * as inBrowser from '../../src/record/bytes-browser.ts';
import * as inNode from '../../src/record/bytes-node.ts';

it('hashes alike in a browser and in Node, whatever the text', () => {
  // FIPS 180-2, appendix B.1.
  expect(inBrowser.sha256Hex('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  fc.assert(
    fc.property(
      fc.string({ unit: 'grapheme' }),
      text => inBrowser.sha256Hex(text) === inNode.sha256Hex(text),
    ),
  );
});

it('hashes bytes without a piece of them alike in a browser and in Node, and as the rest alone', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 20_000, size: 'max' }), fc.nat(), fc.nat(), (bytes, a, b) => {
      const [start = 0, end = 0] = [a, b].map(n => n % (bytes.length + 1)).sort((x, y) => x - y);
      const rest = Buffer.concat([bytes.subarray(0, start), bytes.subarray(end)]);
      const hash = inNode.sha256HexWithout(bytes, start, end);
      expect(hash).toBe(inBrowser.sha256HexWithout(bytes, start, end));
      expect(hash).toBe(createHash('sha256').update(rest).digest('hex'));
    }),
    { numRuns: 50 },
  );
});

it('reads bytes of ASCII alike in a browser and in Node, one character each, the others too', () => {
  fc.assert(
    fc.property(fc.uint8Array(), bytes => {
      const [browser, node] = [inBrowser.byteString(bytes), inNode.byteString(bytes)];
      expect(browser.length).toBe(bytes.length);
      expect(node.length).toBe(bytes.length);
      bytes.forEach((byte, at) => {
        if (byte < 0x80) expect(`${browser[at]}${node[at]}`).toBe(String.fromCharCode(byte, byte));
        else expect(Math.min(browser.charCodeAt(at), node.charCodeAt(at))).toBeGreaterThan(0x7f);
      });
    }),
  );
});
