import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import openWabt from 'wabt';

const kernel = (name: string) =>
  fileURLToPath(new URL(`../src/voice/phone-network/kernel/${name}`, import.meta.url));

/** The module that stands for src/voice/phone-network/kernel/dense.wat, assembled. */
export async function assembledKernel(): Promise<string> {
  const parsed = (await openWabt()).parseWat('dense.wat', readFileSync(kernel('dense.wat'), 'utf8'), {
    simd: true,
  });
  parsed.validate();
  const text = Buffer.from(parsed.toBinary({}).buffer).toString('base64');
  const lines = text.match(/.{1,90}/g)?.map(line => `  '${line}'`) ?? [];
  return [
    '/** `dense.wat`, assembled by `acoustic-model/kernel.ts`; a test holds that the two agree. */',
    `export const kernelBase64 = [\n${lines.join(',\n')},\n].join('');`,
    '',
  ].join('\n');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(kernel('bytes.ts'), await assembledKernel());
}
