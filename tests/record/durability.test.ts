import { describe, expect, it } from 'vitest';
import { killAndRecover } from './kill-run.ts';
import { tempFolder } from './support.ts';

const runs = Number(process.env.RECORD_KILLS ?? 40);
const LANES = 2;

describe('a writer killed in the middle of its work', () => {
  it(`has lost no entry it had acknowledged, in ${runs} runs`, { timeout: runs * 10_000 }, async () => {
    const folder = tempFolder();
    const lane = async (first: number): Promise<void> => {
      for (let run = first; run < runs; run += LANES) {
        const outcome = await killAndRecover(folder, run);
        expect(outcome, `run ${run}`).toMatchObject({ lost: 0, verified: true });
        expect(outcome.acknowledged).toBeGreaterThan(0);
      }
    };
    await Promise.all(Array.from({ length: LANES }, (_, first) => lane(first)));
  });
});
