import { randomUUID } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, rm, statfs } from 'node:fs/promises';
import { join } from 'node:path';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { MAX_UPLOAD_BYTES } from '../protocol/index.ts';
import { RateByKey } from '../rate-limit.ts';
import { Refused } from '../refused.ts';
import { OWNER_ONLY } from '../state-file.ts';
import { pairedAs, type ServerContext } from './context.ts';
import { OneAtATime } from './one-at-a-time.ts';

/** A tablet that was out of reach for days has some records to send, not hundreds. */
const RATE = { burst: 20, perSecond: 1 / 60 };
/** With less room than this the disk is for the sessions that run. */
const ROOM_BYTES = 512 * 1024 * 1024;

/** Lets no more than so many bytes through. */
function atMost(bytes: number): Transform {
  let passed = 0;
  return new Transform({
    transform(part: Buffer, _encoding, done) {
      passed += part.length;
      if (passed > bytes) done(new Refused('tooLong', 'What was sent is too long.'));
      else done(null, part);
    },
  });
}

/** `POST /api/upload`: a record that a tablet finished by itself, as `application/x-ndjson`. */
export async function uploadRoute(app: FastifyInstance, context: ServerContext): Promise<void> {
  const rate = new RateByKey(RATE, context.nowMs);
  const uploads = new OneAtATime('The record sent before is still being checked; send this one after it.');
  // What an end of the server cut short is sent again.
  await rm(context.incoming, { recursive: true, force: true });
  await mkdir(context.incoming, { recursive: true, mode: 0o700 });
  const sender = (request: FastifyRequest) => pairedAs(request, context, ['technician']);

  app.addContentTypeParser('application/x-ndjson', (_request, body, done) => done(null, body));
  app.post(
    '/api/upload',
    {
      // Before anything is read: nobody unknown fills the disk.
      onRequest: async request => {
        const { device } = sender(request);
        if (!rate.take(device))
          throw new Refused('tooFast', 'Too many records at once; send the rest later.');
        if (!/^application\/x-ndjson\b/.test(request.headers['content-type'] ?? ''))
          throw new Refused('malformed', 'A record is sent as application/x-ndjson, line by line.');
        if (Number(request.headers['content-length'] ?? 0) > MAX_UPLOAD_BYTES)
          throw new Refused('tooLong', 'What was sent is too long.');
        const { bavail, bsize } = await statfs(context.incoming);
        if (bavail * bsize < ROOM_BYTES)
          throw new Refused('busy', "The laptop's disk is nearly full; make room there, then send it again.");
      },
    },
    async request => {
      const pairing = sender(request);
      return uploads.of(pairing.device, async () => {
        const draft = join(context.incoming, randomUUID());
        try {
          await pipeline(
            request.raw,
            atMost(MAX_UPLOAD_BYTES),
            // On the disk before anybody is told so.
            createWriteStream(draft, { mode: OWNER_ONLY, flags: 'wx', flush: true }),
          );
          return await context.shop.keep(draft, pairing);
        } finally {
          await rm(draft, { force: true });
        }
      });
    },
  );
}
