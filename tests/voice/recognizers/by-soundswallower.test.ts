import { loadEngine } from '../../../src/voice/decoders/soundswallower/load-node.ts';
import { createSoundSwallowerEar } from '../../../src/voice/recognizers/by-soundswallower.ts';
import { soundRecognizerContract } from './sound-contract.ts';

soundRecognizerContract('SoundSwallower', async () =>
  createSoundSwallowerEar(await loadEngine(), { language: 'en' }),
);
