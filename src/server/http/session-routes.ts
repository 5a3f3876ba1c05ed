import { Readable } from 'node:stream';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { MAX_FIND, type Role } from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import { pairedAs, type ServerContext, stillPaired } from './context.ts';
import { REPORT_POLICY } from './headers.ts';
import { OneAtATime } from './one-at-a-time.ts';
import { ReportPasses } from './report-passes.ts';

const readers: readonly Role[] = ['supervisor', 'technician'];

const paramsSchema = z.object({ id: z.string() });
const querySchema = z.object({ from: z.coerce.number().int().min(0).default(0) });
const findSchema = z.object({ find: z.string().trim().max(MAX_FIND).default('') });

/** A report goes out in pieces: a stop comes between any two of them. */
const PIECE_BYTES = 64 * 1024;

function* piecesOf(bytes: Uint8Array): Generator<Uint8Array> {
  for (let from = 0; from < bytes.length; from += PIECE_BYTES) yield bytes.subarray(from, from + PIECE_BYTES);
}

/** Sessions of the shop, their records and their reports: of one's own bay, and for the supervisor of all. */
export function sessionRoutes(app: FastifyInstance, context: ServerContext): void {
  const { shop, bays } = context;
  const passes = new ReportPasses(context.nowMs);
  const reports = new OneAtATime('The report asked for before is still being written; wait for it.');

  const logs = new OneAtATime('The entries asked for before are still being read; wait for them.');

  const mayRead = (request: FastifyRequest, holder: string | null = null) => {
    const reader =
      holder === null ? pairedAs(request, context, readers) : stillPaired(holder, context, readers);
    const { id } = paramsSchema.parse(request.params);
    if (!shop.mayRead(reader, id))
      throw new Refused('notYours', 'That session belongs to another bay; ask the supervisor.');
    return { id, reader };
  };
  const pathOf = async (id: string) => {
    const path = await shop.pathOf(id);
    if (path === null) throw new Refused('notFound', 'There is no such session in this shop.');
    return path;
  };
  const reportPath = (id: string) => `/api/sessions/${encodeURIComponent(id)}/report`;

  app.get('/api/sessions', async request => {
    const reader = pairedAs(request, context, readers);
    const query = findSchema.safeParse(request.query);
    if (!query.success)
      throw new Refused('malformed', `Sessions are found by a text of up to ${MAX_FIND} characters.`);
    const going = new Set([...bays.values()].map(bay => bay.goingOn));
    return { sessions: await shop.list(reader, query.data.find, going) };
  });

  app.get('/api/sessions/:id/log', async (request, reply) => {
    const { id, reader } = mayRead(request);
    const query = querySchema.safeParse(request.query);
    if (!query.success) throw new Refused('malformed', 'The log is asked for from an entry number on.');
    const { from } = query.data;
    // Of a session that runs the server has the lines, and hands them on unread: every face asks for them every few seconds.
    const atHand = [...bays.values()].map(bay => bay.lines(id, from)).find(found => found !== null);
    if (atHand)
      return reply
        .type('application/json; charset=utf-8')
        .send(`{"entries":[${atHand.join(',')}],"next":${from + atHand.length}}`);
    const entries = await logs.of(reader.device, async () =>
      shop.reading.do('entries', { path: await pathOf(id), from }),
    );
    return { entries, next: from + entries.length };
  });

  app.post('/api/sessions/:id/report', async (request, reply) => {
    const { id, reader } = mayRead(request);
    await pathOf(id);
    const path = reportPath(id);
    reply.header('set-cookie', passes.issue({ session: id, device: reader.device }, path));
    return { path };
  });

  app.get('/api/sessions/:id/report', async (request, reply) => {
    const { id } = paramsSchema.parse(request.params);
    const { device } = mayRead(request, passes.holder(request.headers.cookie, id)).reader;
    const html = await reports.of(device, async () => shop.reading.do('report', { path: await pathOf(id) }));
    return reply
      .header('content-security-policy', REPORT_POLICY)
      .type('text/html; charset=utf-8')
      .send(Readable.from(piecesOf(html)));
  });
}
