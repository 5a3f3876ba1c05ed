import websocket from '@fastify/websocket';
import type { FastifyInstance } from 'fastify';
import { MAX_CLIENT_MESSAGE_BYTES } from '../protocol/index.ts';
import { addressKey, RateByKey } from '../rate-limit.ts';
import { Refused } from '../refused.ts';
import { refuseBrokenUpgrade } from './bare-sockets.ts';
import { Connection } from './connection.ts';
import type { ServerContext } from './context.ts';
import { Faces } from './faces.ts';

/** A message somewhat too long gets a sentence; one far too long is not even read. */
const MOST_READ_BYTES = 8 * MAX_CLIENT_MESSAGE_BYTES;
const MOST_STRANGERS = 20;
/** A device that lost its line comes back at once, whatever else its address asks for. */
const COMING = { burst: 60, perSecond: 2 };
const HEARTBEAT_MS = 2_000;
const FAREWELL_MS = 1000;
/** RFC 6455, section 7.4.1. */
const GOING_AWAY = 1001;

/** `wss://<host>/ws`: the faces. */
export async function socketRoute(app: FastifyInstance, context: ServerContext): Promise<void> {
  const faces = new Faces();
  const coming = new RateByKey(COMING, context.nowMs);
  const heartbeat = setInterval(() => {
    for (const face of faces.all()) {
      face.look();
      face.checkAlive();
    }
  }, HEARTBEAT_MS);
  await app.register(websocket, {
    options: { maxPayload: MOST_READ_BYTES },
    preClose: async () => {
      clearInterval(heartbeat);
      const { clients } = app.websocketServer;
      for (const client of clients) client.close(GOING_AWAY);
      // A client that does not answer does not keep the server.
      setTimeout(() => {
        for (const client of clients) client.terminate();
      }, FAREWELL_MS);
      app.websocketServer.close();
    },
  });
  app.websocketServer.on('wsClientError', refuseBrokenUpgrade);
  app.get(
    '/ws',
    {
      websocket: true,
      preValidation: async request => {
        if (!coming.take(addressKey(request.ip)))
          throw new Refused('tooFast', 'Too many connections from this address; wait a little.');
        if (faces.strangers(request.ip) >= MOST_STRANGERS)
          throw new Refused('tooManyTries', 'Too many connections that have not said hello.');
      },
    },
    (socket, request) => {
      new Connection(socket, request.ip, context, faces);
    },
  );
}
