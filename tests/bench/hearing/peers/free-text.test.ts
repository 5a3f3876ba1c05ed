import { randomFillSync } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { freeTextPeers, PeerError, textsOf } from '../../../../bench/hearing/peers/free-text.ts';

const sound = () => {
  const bytes = randomFillSync(new Uint8Array(1_600));
  return Float32Array.from(bytes, byte => byte / 256);
};

const folder = mkdtempSync(join(tmpdir(), 'first-fire-texts-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('a recognizer that is a command', () => {
  it('is named on the command line, and the rest is left', () => {
    expect(freeTextPeers(['peers', '--peer', 'a=b c=d', '--quick', '--peer', 'e=f'])).toEqual({
      peers: [
        { name: 'a', command: 'b c=d' },
        { name: 'e', command: 'f' },
      ],
      rest: ['peers', '--quick'],
    });
    expect(() => freeTextPeers(['--peer', 'nothing'])).toThrow(PeerError);
  });

  it('is given a WAV file for each sound and asked once for each', async () => {
    const peer = {
      name: 'size',
      command: 'while read file; do echo "$RANDOM$(wc -c < "$file") at $file"; done',
    };
    const [one, two] = [sound(), new Float32Array(800)];
    const first = await textsOf(peer, [one, two], folder);
    expect(first[0]).toMatch(/3244 at .*\.wav$/);
    expect(first[1]).toMatch(/1644 at .*\.wav$/);
    expect(await textsOf(peer, [two, one], folder)).toEqual([first[1], first[0]]);
  });

  it('that ends before it has answered is told of', async () => {
    await expect(textsOf({ name: 'gone', command: 'true' }, [sound()], folder)).rejects.toThrow(/gone ended/);
  });
});
