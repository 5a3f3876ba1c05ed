import { join } from 'node:path';
import { loadProfile } from '../../../src/profile/load.ts';
import { startServer, stopAllOnFailure } from '../../../src/server/index.ts';
import { demoJob } from '../../../src/session/demo-job.ts';

/** A server to be killed: says in one line where it listens and which codes are open. */
const [folder = ''] = process.argv.slice(2);
const profile = await loadProfile('demo-six');
const server = await startServer({
  port: 0,
  host: '127.0.0.1',
  bays: ['bay 1', 'bay 2'],
  shop: folder,
  page: join(folder, 'no-page'),
  models: 'no-models',
  usual: { profiles: new Map([['demo-six', profile]]), job: demoJob, units: 'us', language: 'en' },
  tell: () => {},
});
stopAllOnFailure(server, sentence => process.stderr.write(`${sentence}\n`));
// What nobody takes, as of a part of it that has a fault.
process.on('SIGUSR2', () => void Promise.reject(new Error('a fault')));
process.stdout.write(`${JSON.stringify({ port: server.port, codes: server.codes() })}\n`);
