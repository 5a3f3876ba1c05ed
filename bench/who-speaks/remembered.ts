import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Voice } from '../../src/voice/who-speaks/voice-network.ts';

/** What somebody said, each as a direction, and which recordings it is out of. */
export interface Speaker {
  readonly source: string;
  readonly voices: readonly Voice[];
}

const cache = fileURLToPath(new URL('../../.cache/who-speaks/', import.meta.url));
const models = ['phone-network/model/english.bin', 'who-speaks/model/voices.bin'];
const modelKey = models
  .reduce(
    (hash, model) => hash.update(readFileSync(new URL(`../../src/voice/${model}`, import.meta.url))),
    createHash('sha256'),
  )
  .digest('hex')
  .slice(0, 16);

/** The voices that were listened to with these weights, or what they are found to be now. */
export function remembered(name: string, listen: () => readonly Speaker[]): readonly Speaker[] {
  const file = join(cache, `${modelKey}-${name}.json`);
  if (existsSync(file)) {
    const kept: readonly { readonly source: string; readonly voices: readonly number[][] }[] = JSON.parse(
      readFileSync(file, 'utf8'),
    );
    return kept.map(({ source, voices }) => ({
      source,
      voices: voices.map(voice => Float32Array.from(voice)),
    }));
  }
  const speakers = listen();
  mkdirSync(cache, { recursive: true });
  const plain = speakers.map(({ source, voices }) => ({ source, voices: voices.map(voice => [...voice]) }));
  writeFileSync(file, JSON.stringify(plain));
  return speakers;
}
