import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { encodeWav } from '../../../src/voice/audio/wav-encode.ts';
import { speechRateHz } from '../../../src/voice/resample.ts';

/** A recognizer of free text: a command that reads the path of a WAV file a line and writes what was said in it a line. */
export interface FreeText {
  readonly name: string;
  readonly command: string;
}

/** A peer that cannot be asked: one sentence, which and why. */
export class PeerError extends Error {}

const flag = '--peer';

/** Peers from the command line, `--peer NAME=COMMAND` each. @throws PeerError */
export function freeTextPeers(args: readonly string[]): {
  readonly peers: readonly FreeText[];
  /** The arguments without them. */
  readonly rest: readonly string[];
} {
  const isValue = (i: number) => args[i - 1] === flag;
  const peers = args
    .filter((_, i) => isValue(i))
    .map(arg => {
      const at = arg.indexOf('=');
      if (at < 1 || at === arg.length - 1) {
        throw new PeerError(`"${arg}" names no peer; write ${flag} NAME=COMMAND.`);
      }
      return { name: arg.slice(0, at), command: arg.slice(at + 1) };
    });
  return { peers, rest: args.filter((arg, i) => arg !== flag && !isValue(i)) };
}

const cache = fileURLToPath(new URL('../../../.cache/peers/', import.meta.url));
const hash = (of: string | Uint8Array) => createHash('sha256').update(of).digest('hex').slice(0, 32);

/**
 * What a peer wrote for each sound. It is asked for each sound once: what it wrote is kept by its command and the sound.
 * @throws PeerError when its command ends before it has answered.
 */
export async function textsOf(
  { name, command }: FreeText,
  sounds: readonly Float32Array[],
  folderOfTexts: string = cache,
): Promise<readonly string[]> {
  mkdirSync(folderOfTexts, { recursive: true });
  const file = join(folderOfTexts, `${hash(command)}.tsv`);
  const known = new Map(
    existsSync(file)
      ? readFileSync(file, 'utf8')
          .trimEnd()
          .split('\n')
          .map(line => [line.slice(0, 32), line.slice(33)])
      : [],
  );
  const keys = sounds.map(sound => hash(new Uint8Array(sound.buffer, sound.byteOffset, sound.byteLength)));
  const asked = keys
    .map((key, i) => ({ key, sound: sounds[i] as Float32Array }))
    .filter(({ key }) => !known.has(key));
  if (asked.length > 0) {
    const folder = mkdtempSync(join(tmpdir(), 'first-fire-peer-'));
    const wav = join(folder, 'sound.wav');
    const child = spawn(command, { shell: true, stdio: ['pipe', 'pipe', 'inherit'] });
    // That it ended is noticed by the answer that does not come.
    child.stdin.on('error', () => {});
    const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
    try {
      for (const { key, sound } of asked) {
        writeFileSync(wav, encodeWav({ samples: sound, sampleRateHz: speechRateHz }));
        child.stdin.write(`${wav}\n`);
        const line = await lines.next();
        if (line.done === true)
          throw new PeerError(`${name} ended before it had answered; its command is: ${command}`);
        known.set(key, line.value);
        appendFileSync(file, `${key}\t${line.value}\n`);
      }
      child.stdin.end();
      if (child.exitCode === null) await once(child, 'exit');
    } finally {
      child.kill();
      rmSync(folder, { recursive: true });
    }
  }
  return keys.map(key => known.get(key) ?? '');
}
