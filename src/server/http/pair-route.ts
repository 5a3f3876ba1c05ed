import type { FastifyInstance } from 'fastify';
import { type PairAnswer, PROTOCOL_VERSION, pairRequestSchema } from '../protocol/index.ts';
import { addressKey, atMostInAnHour, RateByKey, TokenBucket } from '../rate-limit.ts';
import { Refused } from '../refused.ts';
import type { ServerContext } from './context.ts';

/** Nobody types six digits faster than this. */
const FOR_ONE = { burst: 5, perSecond: 1 / 12 };
/** An address that was wrong so often within any hour has to wait: it cannot use up what the others may try. */
export const WRONG_IN_AN_HOUR = 10;
const WRONG_OF_ONE = atMostInAnHour(WRONG_IN_AN_HOUR);
/** All together guess no faster than that, from however many addresses. */
const WRONG_OF_ALL = { burst: 30, perSecond: 1 / 30 };

/** `POST /api/pair`: six digits for a token. */
export function pairRoute(app: FastifyInstance, context: ServerContext): void {
  const { desk, pairings, bays, nowMs, tell } = context;
  const forOne = new RateByKey(FOR_ONE, nowMs);
  const wrongOfOne = new RateByKey(WRONG_OF_ONE, nowMs);
  const wrongOfAll = new TokenBucket(WRONG_OF_ALL, nowMs);

  const refuseWrong = (address: string): Refused => {
    wrongOfAll.take();
    wrongOfOne.take(addressKey(address));
    tell(`A pairing code was refused: a device at ${address} sent one that is wrong or out of date.`);
    if (!wrongOfOne.hasOne(addressKey(address)))
      tell(
        `${address} has sent so many wrong codes that it may send none for ${Math.round(1 / WRONG_OF_ONE.perSecond / 60)} minutes.`,
      );
    if (!wrongOfAll.hasOne())
      tell(
        'So many wrong codes were sent that no device can be paired for half a minute: somebody is guessing.',
      );
    return new Refused('wrongCode', "That code is wrong or out of date; look at the server's terminal.");
  };

  app.post('/api/pair', async (request): Promise<PairAnswer> => {
    const key = addressKey(request.ip);
    if (!forOne.take(key) || !wrongOfOne.hasOne(key) || !wrongOfAll.hasOne())
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
    const found = desk.redeem(code);
    if (!found) throw refuseWrong(request.ip);
    const added = await pairings.add(found.bay, found.role, device);
    if (!added) throw new Refused('notNow', 'Too many devices are paired in this bay; let go of one first.');
    bays.get(found.bay)?.show();
    tell(`Paired in ${found.bay}: ${JSON.stringify(device)} as ${found.role}.`);
    return {
      v: PROTOCOL_VERSION,
      token: added.token,
      role: found.role,
      bay: found.bay,
      expiresAtMs: added.pairing.expiresAtMs,
    };
  });
}
