import canonicalize from 'canonicalize';
import { describe, expect, it } from 'vitest';
import { isCanonicalNumber, isSurelyCanonicalObject } from '../../src/record/canonical-scan.ts';
import { findNonJson } from '../../src/record/json.ts';
import { sha256Hex } from '../../src/record/seal.ts';

/** The double with these bits, most significant byte first. */
function fromBits(hex: string): number {
  return Buffer.from(hex, 'hex').readDoubleBE();
}

describe('SHA-256 gives the digests of FIPS 180 (NIST example values for SHA-256; NIST CAVP SHA256ShortMsg, Len 0)', () => {
  it.each([
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('"%s"', (message, digest) => {
    expect(sha256Hex(message)).toBe(digest);
  });

  it('a million times the letter a (FIPS 180-2, appendix B.3)', () => {
    expect(sha256Hex('a'.repeat(1_000_000))).toBe(
      'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0',
    );
  });
});

/** RFC 8785, appendix B, table of number serialization samples. */
const numbers = [
  ['0000000000000000', '0'],
  ['8000000000000000', '0'],
  ['0000000000000001', '5e-324'],
  ['8000000000000001', '-5e-324'],
  ['7fefffffffffffff', '1.7976931348623157e+308'],
  ['ffefffffffffffff', '-1.7976931348623157e+308'],
  ['4340000000000000', '9007199254740992'],
  ['c340000000000000', '-9007199254740992'],
  ['4430000000000000', '295147905179352830000'],
  ['44b52d02c7e14af5', '9.999999999999997e+22'],
  ['44b52d02c7e14af6', '1e+23'],
  ['44b52d02c7e14af7', '1.0000000000000001e+23'],
  ['444b1ae4d6e2ef4e', '999999999999999700000'],
  ['444b1ae4d6e2ef4f', '999999999999999900000'],
  ['444b1ae4d6e2ef50', '1e+21'],
  ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
  ['3eb0c6f7a0b5ed8d', '0.000001'],
  ['41b3de4355555553', '333333333.3333332'],
  ['41b3de4355555554', '333333333.33333325'],
  ['41b3de4355555555', '333333333.3333333'],
  ['41b3de4355555556', '333333333.3333334'],
  ['41b3de4355555557', '333333333.33333343'],
  ['becbf647612f3696', '-0.0000033333333333333333'],
  ['43143ff3c1cb0959', '1424953923781206.2'],
] as const;

describe('numbers are written as RFC 8785, appendix B, has them', () => {
  it.each(numbers)('%s as %s', (bits, text) => {
    expect(canonicalize(fromBits(bits))).toBe(text);
    const object = `{"n":${text}}`;
    expect(isCanonicalNumber(text)).toBe(true);
    expect(isSurelyCanonicalObject(Buffer.from(object), 0, object.length)).toBe(true);
  });

  it.each(['7fffffffffffffff', '7ff0000000000000'])('%s is refused', bits => {
    expect(findNonJson(fromBits(bits), 'n')).toContain('not a finite number');
  });
});

describe('objects are written as RFC 8785 has them', () => {
  /** Section 3.2.2, the sample object as it comes in. */
  const sample = String.raw`{
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  }`;

  it('section 3.2.3, the sample sorted', () => {
    expect(canonicalize(JSON.parse(sample))).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
  });

  it('section 3.2.4, the bytes of the sample, as their SHA-256 takes them in', () => {
    const bytes = Buffer.from(
      `7b226c69746572616c73223a5b6e756c6c2c747275652c66616c73655d2c226e756d62657273223a5b
       3333333333333333332e333333333333332c31652b33302c342e352c302e3030322c31652d32375d2c
       22737472696e67223a22e282ac245c75303030665c6e4127425c225c5c5c5c5c222f227d`.replaceAll(/\s/g, ''),
      'hex',
    );
    expect(sha256Hex(canonicalize(JSON.parse(sample)) ?? '')).toBe(sha256Hex(bytes.toString('utf8')));
  });

  it('section 3.2.3, names in the order of their UTF-16 code units', () => {
    const names = String.raw`{
      "\u20ac": "Euro Sign",
      "\r": "Carriage Return",
      "\ufb33": "Hebrew Letter Dalet With Dagesh",
      "1": "One",
      "\ud83d\ude00": "Emoji: Grinning Face",
      "\u0080": "Control",
      "\u00f6": "Latin Small Letter O With Diaeresis"
    }`;
    const values = [...(canonicalize(JSON.parse(names)) ?? '').matchAll(/:"([^"]*)"/g)].map(
      ([, value]) => value,
    );
    expect(values).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ]);
  });
});
