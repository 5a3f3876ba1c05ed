import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { fitForFirstFire, ProfileError, parseProfile } from '../../profile/parse.ts';
import { MAX_PROFILE_BYTES } from '../protocol/index.ts';
import { RateByKey } from '../rate-limit.ts';
import { Refused } from '../refused.ts';
import { pairedAs, type ServerContext } from './context.ts';

/** Somebody who puts a profile right tries a few times. */
const RATE = { burst: 10, perSecond: 1 / 10 };

const bodySchema = z.record(z.string(), z.unknown());

/** `POST /api/profiles`: an engine profile that the technician brings for their own bay, or the supervisor for all. */
export function profileRoute(app: FastifyInstance, context: ServerContext): void {
  const rate = new RateByKey(RATE, context.nowMs);
  app.post('/api/profiles', { bodyLimit: MAX_PROFILE_BYTES }, async request => {
    const { bay, device, role } = pairedAs(request, context, ['technician', 'supervisor']);
    if (!rate.take(device)) throw new Refused('tooFast', 'Too many profiles at once; wait a little.');
    const body = bodySchema.safeParse(request.body);
    if (!body.success) throw new Refused('malformed', 'An engine profile is sent as JSON.');
    try {
      const profile = fitForFirstFire(parseProfile(JSON.stringify(body.data), 'sent'), 'sent');
      const bays = [...context.bays].filter(([own]) => role === 'supervisor' || own === bay);
      const names = bays.map(([, each]) => each.bring(profile));
      const [name] = names;
      if (name === undefined) throw new Refused('notFound', 'There is no such bay any more.');
      await Promise.all(bays.map(([, each]) => each.enginesKept()));
      return { name };
    } catch (error) {
      if (error instanceof ProfileError) throw new Refused('malformed', error.message);
      throw error;
    }
  });
}
