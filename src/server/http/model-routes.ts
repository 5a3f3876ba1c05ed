import { createReadStream } from 'node:fs';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { listModels, pathOfModel } from '../models/model-folder.ts';
import type { ModelList, Role } from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import { pairedAs, type ServerContext } from './context.ts';

/** Who listens. */
const listeners: readonly Role[] = ['technician', 'second'];

const paramsSchema = z.object({ name: z.string() });

/** Vosk models of this laptop, for paired devices that listen. */
export function modelRoutes(app: FastifyInstance, context: ServerContext): void {
  app.get('/api/models', async (request): Promise<ModelList> => {
    pairedAs(request, context, listeners);
    const models = await listModels(context.models);
    return { models: models.map(({ name, sha256, bytes }) => ({ name, sha256, bytes })) };
  });

  app.get('/api/models/:name', async (request, reply) => {
    pairedAs(request, context, listeners);
    const { name } = paramsSchema.parse(request.params);
    // Only what is in the list is served: no name leads out of the folder.
    const model = (await listModels(context.models)).find(each => each.name === name);
    if (!model) throw new Refused('notFound', 'There is no such model on this laptop.');
    return reply
      .type('application/gzip')
      .header('content-length', model.bytes)
      .send(createReadStream(pathOfModel(context.models, model)));
  });
}
