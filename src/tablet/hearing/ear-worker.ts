import { hearingOf } from '../../voice/languages/index.ts';
import { createNetworkEar } from '../../voice/recognizers/by-network.ts';
import { createVoiceNetwork } from '../../voice/who-speaks/voice-network.ts';
import { fetchNetwork, fetchVoiceNetwork } from './fetch-network.ts';
import { serveEar } from './serve-ear.ts';

serveEar(async (_model, language) => {
  const { pronounce, leastCertainty, nearBounds } = hearingOf(language);
  const [weights, voices] = await Promise.all([fetchNetwork(language), fetchVoiceNetwork()]);
  return createNetworkEar(weights, pronounce, {
    leastCertainty,
    nearBounds,
    voiceIn: createVoiceNetwork(voices),
  });
});
