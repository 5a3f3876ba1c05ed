import { hearingOf } from '../../../voice/languages/index.ts';
import { createVoskEar } from '../../../voice/recognizers/by-vosk.ts';
import { fetchNetwork } from '../fetch-network.ts';
import { serveEar } from '../serve-ear.ts';
import { startEngine } from './engine-thread.ts';

serveEar(async (archive, language) =>
  createVoskEar(await startEngine(archive), await fetchNetwork(language), hearingOf(language).pronounce),
);
