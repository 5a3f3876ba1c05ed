import fastify, {
  type FastifyError,
  type FastifyInstance,
  type FastifyReply,
  type FastifyRequest,
} from 'fastify';
import { type ErrorCode, MAX_CLIENT_MESSAGE_BYTES } from '../protocol/index.ts';
import { addressKey, RateByKey } from '../rate-limit.ts';
import { Refused, refusalOf } from '../refused.ts';
import type { ServerCertificate } from '../tls/certificate.ts';
import { refuseBrokenRequest, watchSockets } from './bare-sockets.ts';
import type { ServerContext } from './context.ts';
import type { Guard } from './guard.ts';
import { secure } from './headers.ts';
import { modelRoutes } from './model-routes.ts';
import { pageRoute } from './page-route.ts';
import { pairRoute } from './pair-route.ts';
import { profileRoute } from './profile-route.ts';
import { sessionRoutes } from './session-routes.ts';
import { socketRoute } from './socket-route.ts';
import { trustRoutes } from './trust-routes.ts';
import { uploadRoute } from './upload-route.ts';

/** A page with all its files at once, and then somebody who looks through the sessions. */
const REQUESTS = { burst: 200, perSecond: 20 };

/** What has not ended by itself so long after the end of the server is cut off. */
const FAREWELL_MS = 2000;

const statusOf: Partial<Record<ErrorCode, number>> = {
  malformed: 400,
  otherVersion: 400,
  notPaired: 401,
  wrongCode: 403,
  notYourRole: 403,
  notYours: 403,
  notTheOwner: 403,
  wrongOrigin: 403,
  notFound: 404,
  tooLong: 413,
  tooManyTries: 429,
  tooFast: 429,
  busy: 503,
  failed: 500,
};

/** What the library itself refuses, in our words. */
function fromLibrary({ statusCode, code }: FastifyError): Refused | null {
  if (code === 'FST_ERR_CTP_BODY_TOO_LARGE') return new Refused('tooLong', 'What was sent is too long.');
  return statusCode !== undefined && statusCode >= 400 && statusCode < 500
    ? new Refused('malformed', 'The request cannot be used; reload the page.')
    : null;
}

/** The HTTPS server with all its routes; it does not listen yet. */
export async function buildApp(
  context: ServerContext,
  guard: Guard,
  { key, cert, authority }: ServerCertificate,
  pageFolder: string,
): Promise<FastifyInstance> {
  const app: FastifyInstance = fastify({
    https: {
      key,
      cert,
      minVersion: 'TLSv1.2',
      handshakeTimeout: context.patienceMs,
      headersTimeout: context.patienceMs,
      connectionsCheckingInterval: context.patienceMs,
    },
    bodyLimit: MAX_CLIENT_MESSAGE_BYTES,
    requestTimeout: 30_000,
    forceCloseConnections: true,
    // Nothing of what people send stands in a log.
    logger: false,
    routerOptions: { maxParamLength: 200 },
    clientErrorHandler: refuseBrokenRequest,
    frameworkErrors: (error, request, reply) => refuse(error, request, reply),
  });
  const closeSockets = watchSockets(app.server, context.known);
  app.addHook('preClose', async () => {
    setTimeout(closeSockets, FAREWELL_MS).unref();
  });
  const rate = new RateByKey(REQUESTS, context.nowMs);

  app.addHook('onRequest', async (request, reply) => {
    secure(request, reply);
    guard.check(request);
    // A socket has a limit of its own: a page that asked for much comes back all the same to stop.
    if (request.headers.upgrade === undefined && !rate.take(addressKey(request.ip)))
      throw new Refused('tooFast', 'Too many requests; wait a little.');
  });
  app.addHook('onSend', async ({ headers, raw }, reply) => {
    // A socket that was refused is not the HTTP server's any more; nobody else would close it.
    if (headers.upgrade !== undefined) reply.raw.once('finish', () => raw.socket.destroySoon());
  });
  function refuse(error: FastifyError, request: FastifyRequest, reply: FastifyReply) {
    const known = error instanceof Refused ? error : fromLibrary(error);
    if (!known) context.tell(`A request failed: ${String(error)}`);
    const refusal = refusalOf(known ?? error);
    reply.code(statusOf[refusal.code] ?? 409);
    // Who opened an address in a tab gets the sentence alone.
    return request.headers.accept?.startsWith('text/html')
      ? reply.type('text/plain; charset=utf-8').send(refusal.sentence)
      : reply.type('application/json; charset=utf-8').send({ error: refusal });
  }
  app.setErrorHandler(refuse);
  app.setNotFoundHandler(() => {
    throw new Refused('notFound', 'There is nothing at this address.');
  });

  await socketRoute(app, context);
  pairRoute(app, context);
  profileRoute(app, context);
  sessionRoutes(app, context);
  await uploadRoute(app, context);
  modelRoutes(app, context);
  trustRoutes(app, authority);
  pageRoute(app, pageFolder);
  return app;
}
