import type { FastifyInstance } from 'fastify';
import { type PairAnswer, PROTOCOL_VERSION, pairRequestSchema } from '../protocol/index.ts';
import { RateByKey, TokenBucket } from '../rate-limit.ts';
import { Refused } from '../refused.ts';
import type { ServerContext } from './context.ts';

/** Nobody types six digits faster than this; all together guess no faster than that. */
const FOR_ONE = { burst: 5, perSecond: 1 / 12 };
const FOR_ALL = { burst: 30, perSecond: 1 / 6 };

/** `POST /api/pair`: six digits for a token. */
export function pairRoute(app: FastifyInstance, context: ServerContext): void {
  const forOne = new RateByKey(FOR_ONE, context.nowMs);
  const forAll = new TokenBucket(FOR_ALL, context.nowMs);
  app.post('/api/pair', async (request): Promise<PairAnswer> => {
    if (!forOne.take(request.ip) || !forAll.take())
      throw new Refused('tooManyTries', 'Too many tries; wait a minute and type the code again.');
    const parsed = pairRequestSchema.safeParse(request.body);
    if (!parsed.success) {
      const [issue] = parsed.error.issues;
      throw new Refused(
        'malformed',
        `Pairing needs six digits and a name for the device: ${issue?.message}.`,
      );
    }
    const { code, device } = parsed.data;
    const found = context.desk.redeem(code);
    if (!found)
      throw new Refused('wrongCode', "That code is wrong or out of date; look at the server's terminal.");
    const added = await context.pairings.add(found.bay, found.role, device);
    if (!added) throw new Refused('notNow', 'Too many devices are paired in this bay; let go of one first.');
    context.bays.get(found.bay)?.show();
    context.tell(`Paired in ${found.bay}: ${JSON.stringify(device)} as ${found.role}.`);
    return {
      v: PROTOCOL_VERSION,
      token: added.token,
      role: found.role,
      bay: found.bay,
      expiresAtMs: added.pairing.expiresAtMs,
    };
  });
}
