import { cpSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { packagedModel } from '../../../../src/voice/decoders/soundswallower/load-node.ts';
import { VoiceError } from '../../../../src/voice/errors.ts';
import { createEmbeddedRecognizer } from '../../../../src/voice/recognizers/embedded.ts';
import { scratchFolder } from '../../../helpers/scratch.ts';

const files = readdirSync(packagedModel()).filter(name => name !== 'README.txt');

/** A copy of the packaged model, to be damaged. */
function copiedModel(): string {
  const model = join(scratchFolder(), 'en-us');
  cpSync(packagedModel(), model, { recursive: true });
  return model;
}

async function faultOf(model: string): Promise<VoiceError> {
  const fault: unknown = await createEmbeddedRecognizer({ model }).then(
    recognizer => recognizer.close(),
    cause => cause,
  );
  if (!(fault instanceof VoiceError)) throw new Error(`no VoiceError but ${String(fault)}`);
  return fault;
}

describe('a speech model', () => {
  it('is usable as a copy', async () => {
    const recognizer = await createEmbeddedRecognizer({ model: copiedModel() });
    recognizer.close();
  });

  it('that is not there is named in one sentence', async () => {
    const model = join(scratchFolder(), 'none');
    const { code, message } = await faultOf(model);
    expect(code).toBe('modelUnusable');
    expect(message).toBe(
      `The speech model in ${model} has no usable file "mdef"; install the soundswallower package again.`,
    );
  });

  it.each(files)('without its file %s is refused, and the file named', async name => {
    const model = copiedModel();
    rmSync(join(model, name));
    expect((await faultOf(model)).message).toContain(`in ${model} has no usable file "${name}"`);
  });

  it.each(files)('with an empty file %s is refused, and the file named', async name => {
    const model = copiedModel();
    writeFileSync(join(model, name), '');
    expect((await faultOf(model)).message).toContain(`in ${model} has no usable file "${name}"`);
  });

  it.each(files)('with a file %s that breaks off is refused, and the folder named', async name => {
    for (const share of [0.02, 0.5, 0.9]) {
      const model = copiedModel();
      truncateSync(join(model, name), Math.ceil(readFileSync(join(model, name)).length * share));
      const { code, message } = await faultOf(model);
      expect(code).toBe('modelUnusable');
      expect(message).toContain(model);
      expect(message).toMatch(/^The speech model in [^;]+; install .* again\.$/);
    }
  });
});
