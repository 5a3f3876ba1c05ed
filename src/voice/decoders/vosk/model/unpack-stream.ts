import { concatenateBytes } from './bytes.ts';
import { Refusal } from './refusal.ts';

/**
 * Unpacks with the platform's own stream, the same in Node and in a browser: it checks sums and ends by itself.
 * @param most bytes after which it gives up, so that a small archive cannot fill the memory
 * @throws Refusal when it is cut short, damaged or longer than `most`
 */
export async function unpackStream(
  packed: Blob,
  form: 'gzip' | 'deflate-raw',
  most: number,
  what: string,
): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let bytes = 0;
  const reader = packed.stream().pipeThrough(new DecompressionStream(form)).getReader();
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      bytes += next.value.length;
      if (bytes > most) throw new Refusal(`unpacks to more than it may (${what})`, 'bring a smaller model');
      chunks.push(next.value);
    }
  } catch (cause) {
    await reader.cancel().catch(() => {});
    if (cause instanceof Refusal) throw cause;
    throw new Refusal(`is cut short or damaged (${what})`, undefined, { cause });
  }
  return concatenateBytes(chunks);
}
