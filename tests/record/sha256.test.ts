import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sha256Hex as inBrowser } from '../../src/record/sha256-browser.ts';
import { sha256Hex as inNode } from '../../src/record/sha256-node.ts';

it('hashes alike in a browser and in Node, whatever the text', () => {
  // FIPS 180-2, appendix B.1.
  expect(inBrowser('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  fc.assert(fc.property(fc.string({ unit: 'grapheme' }), text => inBrowser(text) === inNode(text)));
});
