import { pronounceEnglish } from '../../voice/languages/pronunciations/english.ts';
import { createNetworkEar } from '../../voice/recognizers/by-network.ts';
import { fetchNetwork } from './fetch-network.ts';
import { serveEar } from './serve-ear.ts';

serveEar(async () => createNetworkEar(await fetchNetwork(), pronounceEnglish));
