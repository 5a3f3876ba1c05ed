import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { verifyLog } from '../../src/record/index.ts';
import { summarize } from '../../src/report/summarize.ts';
import { goUntil } from '../helpers/session-rig.ts';
import { inputOf, sessionFor, tempFolder } from '../report/support.ts';

const HOUR_MS = 3_600_000;

describe('a wall clock that is set back an hour in the middle of a session', () => {
  it('changes no hold and loses nothing; verifying says at which line', async () => {
    const [steady, jumping] = await Promise.all(
      [() => 0, (nowMs: number) => (nowMs > 300_000 ? -HOUR_MS : 0)].map(async wallOffMs => {
        const path = join(tempFolder(), 'log.jsonl');
        const rig = await sessionFor(path, undefined, 'demo-four', wallOffMs);
        await goUntil(rig);
        await rig.record.close();
        const { durationMs, outcome, holds } = summarize(await inputOf(path));
        return { durationMs, outcome, holds, verification: await verifyLog(path) };
      }),
    );
    expect(jumping).toMatchObject({
      durationMs: steady?.durationMs,
      outcome: { kind: 'signedOff' },
      holds: steady?.holds,
      verification: {
        ok: true,
        remarks: [
          {
            kind: 'wallClockJump',
            sentence: expect.stringMatching(/^At line \d+ the wall clock was set back by 3600\.0 s\.$/),
          },
        ],
      },
    });
  });
});
