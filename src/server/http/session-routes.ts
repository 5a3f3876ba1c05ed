import type { FastifyInstance, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { readLog } from '../../record/index.ts';
import { MAX_FIND, type Role } from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import { pairedAs, type ServerContext } from './context.ts';
import { REPORT_POLICY } from './headers.ts';
import { reportPage } from './report-page.ts';
import { ReportPasses } from './report-passes.ts';

const readers: readonly Role[] = ['supervisor', 'technician'];
const ENTRIES_IN_A_PAGE = 500;

const paramsSchema = z.object({ id: z.string() });
const querySchema = z.object({ from: z.coerce.number().int().min(0).default(0) });
const findSchema = z.object({ find: z.string().trim().max(MAX_FIND).default('') });

/** Sessions of the shop, their records and their reports. */
export function sessionRoutes(app: FastifyInstance, context: ServerContext): void {
  const passes = new ReportPasses(context.nowMs);

  const sessionOf = async ({ params }: FastifyRequest) => {
    const { id } = paramsSchema.parse(params);
    const path = await context.shop.pathOf(id);
    if (path === null) throw new Refused('notFound', 'There is no such session in this shop.');
    return { id, path };
  };
  const reportPath = (id: string) => `/api/sessions/${encodeURIComponent(id)}/report`;

  app.get('/api/sessions', async request => {
    pairedAs(request, context, readers);
    const going = new Set([...context.bays.values()].map(bay => bay.goingOn));
    const query = findSchema.safeParse(request.query);
    if (!query.success)
      throw new Refused('malformed', `Sessions are found by a text of up to ${MAX_FIND} characters.`);
    const rows = await context.shop.list(query.data.find);
    return {
      sessions: rows.map(row =>
        going.has(row.id) && row.state === 'brokenOff' ? { ...row, state: 'running' } : row,
      ),
    };
  });

  app.get('/api/sessions/:id/log', async request => {
    pairedAs(request, context, readers);
    const { path } = await sessionOf(request);
    const query = querySchema.safeParse(request.query);
    if (!query.success) throw new Refused('malformed', 'The log is asked for from an entry number on.');
    const { entries } = await readLog(path);
    const page = entries.slice(query.data.from, query.data.from + ENTRIES_IN_A_PAGE);
    return {
      entries: page.map(({ seq, at, monoMs, kind, data }) => ({ seq, at, monoMs, kind, data })),
      next: query.data.from + page.length,
    };
  });

  app.post('/api/sessions/:id/report', async (request, reply) => {
    pairedAs(request, context, readers);
    const { id } = await sessionOf(request);
    const path = reportPath(id);
    reply.header('set-cookie', passes.issue(id, path));
    return { path };
  });

  app.get('/api/sessions/:id/report', async (request, reply) => {
    const { id } = paramsSchema.parse(request.params);
    if (!passes.use(request.headers.cookie, id)) pairedAs(request, context, readers);
    const { path } = await sessionOf(request);
    const html = await reportPage(path);
    return reply.header('content-security-policy', REPORT_POLICY).type('text/html; charset=utf-8').send(html);
  });
}
