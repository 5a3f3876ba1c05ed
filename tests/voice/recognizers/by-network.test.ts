import { pronounceEnglish } from '../../../src/voice/languages/pronunciations/english.ts';
import { loadWeights } from '../../../src/voice/phone-network/load-node.ts';
import { createNetworkEar } from '../../../src/voice/recognizers/by-network.ts';
import { soundRecognizerContract } from './sound-contract.ts';

soundRecognizerContract('network', async () => createNetworkEar(await loadWeights(), pronounceEnglish));
