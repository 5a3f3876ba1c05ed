import { createSoundSwallowerDecoder } from '../../../../src/voice/decoders/soundswallower/decoder.ts';
import { loadEngine } from '../../../../src/voice/decoders/soundswallower/load-node.ts';
import { decoderContract } from '../contract.ts';

decoderContract('SoundSwallower', async () => ({
  decoder: await createSoundSwallowerDecoder(await loadEngine(), 'en'),
}));
