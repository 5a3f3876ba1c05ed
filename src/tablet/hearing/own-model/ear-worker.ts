import { createVoskEar } from '../../../voice/vosk/ear.ts';
import { serveEar } from '../serve-ear.ts';
import { startEngine } from './engine-thread.ts';

serveEar(async archive => createVoskEar(await startEngine(archive)));
