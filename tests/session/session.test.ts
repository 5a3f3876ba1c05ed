import { describe, expect, it } from 'vitest';
import { verifyLog } from '../../src/record/index.ts';
import { goUntil, rig } from '../helpers/session-rig.ts';

describe('a whole session by keys', () => {
  it.each(['demo-six', 'demo-four'])(
    'is led from job card to sign-off on %s, and its record verifies',
    async name => {
      const run = await rig(name);
      await run.session.begin(false);
      await goUntil(run);
      expect(run.key()).toBe('signedOff');
      await expect(run.session.outcome).resolves.toBe('signedOff');
      await run.record.close();
      expect(await verifyLog(run.path)).toMatchObject({ ok: true });
    },
  );
});
