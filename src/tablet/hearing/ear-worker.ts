import { hearingOf } from '../../voice/languages/index.ts';
import { createNetworkEar } from '../../voice/recognizers/by-network.ts';
import { fetchNetwork } from './fetch-network.ts';
import { serveEar } from './serve-ear.ts';

serveEar(async (_model, language) => {
  const { pronounce, leastCertainty } = hearingOf(language);
  return createNetworkEar(await fetchNetwork(language), pronounce, { leastCertainty });
});
