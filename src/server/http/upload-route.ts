import type { FastifyInstance } from 'fastify';
import { MAX_UPLOAD_BYTES } from '../protocol/index.ts';
import { RateByKey } from '../rate-limit.ts';
import { Refused } from '../refused.ts';
import { pairedAs, type ServerContext } from './context.ts';

/** A tablet that was out of reach for days has some records to send, not hundreds. */
const RATE = { burst: 20, perSecond: 1 / 60 };

/** `POST /api/upload`: a record that a tablet finished by itself, as `application/x-ndjson`. */
export function uploadRoute(app: FastifyInstance, context: ServerContext): void {
  const rate = new RateByKey(RATE, context.nowMs);
  app.addContentTypeParser(
    'application/x-ndjson',
    { parseAs: 'buffer', bodyLimit: MAX_UPLOAD_BYTES },
    (_request, body, done) => done(null, body),
  );
  app.post(
    '/api/upload',
    {
      bodyLimit: MAX_UPLOAD_BYTES,
      // Before the body is read: nobody unknown fills the memory.
      onRequest: async request => {
        const { device } = pairedAs(request, context, ['technician']);
        if (!rate.take(device))
          throw new Refused('tooFast', 'Too many records at once; send the rest later.');
      },
    },
    async request => {
      if (!Buffer.isBuffer(request.body))
        throw new Refused('malformed', 'A record is sent as application/x-ndjson, line by line.');
      return context.shop.keep(request.body);
    },
  );
}
