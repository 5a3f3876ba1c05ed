import { Face } from '../tests/server/support/face.ts';
import { openShop } from '../tests/server/support/shop.ts';
import { leadToTheEnd, linesOf } from '../tests/server/support/whole-start.ts';

const JOBS = 20;
const MB = 1e6;

/**
 * Twenty jobs in a row on one server without a restart: what its memory does. Figures after a collection, where
 * Node was started with `--expose-gc`; the face that leads keeps nothing of a job that is over.
 */
export async function benchJobs(): Promise<void> {
  const lines = await linesOf('demo-six');
  const shop = await openShop();
  const face = await Face.paired(shop.base, await shop.pair('technician'));
  console.log('job   heap (MB)   whole process (MB)   seconds');
  for (let job = 1; job <= JOBS; job += 1) {
    const startMs = performance.now();
    await face.do({ do: 'begin' });
    await leadToTheEnd(face, shop.clock(), lines);
    face.messages.length = 0;
    face.seqs.length = 0;
    globalThis.gc?.();
    const { heapUsed, rss } = process.memoryUsage();
    const seconds = (performance.now() - startMs) / 1000;
    console.log(
      [
        String(job).padStart(3),
        (heapUsed / MB).toFixed(1).padStart(11),
        (rss / MB).toFixed(0).padStart(20),
        seconds.toFixed(1).padStart(9),
      ].join(' '),
    );
  }
  face.close();
  await shop.server.close();
}
