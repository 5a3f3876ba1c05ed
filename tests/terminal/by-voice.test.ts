import { expect, it } from 'vitest';
import { verifyLog } from '../../src/record/index.ts';
import { events, hearSession, WHOLE_START_MS } from './support/heard-session.ts';

it(
  'a whole first start by sound alone ends signed off on an engine with two fuel filters and an intake heater',
  async () => {
    const { ran, log, entries } = await hearSession('audio-fixtures/sessions/demo-six.cues.json', 'demo-six');
    expect(ran.exitCode, ran.stderr).toBe(0);
    expect(entries.find(entry => entry.kind === 'closed')?.data).toMatchObject({ outcome: 'signedOff' });
    expect(await verifyLog(log)).toMatchObject({ ok: true });
    // Nothing but the recognizer and the clock has moved the machine.
    expect(new Set(events(entries).map(entry => entry.data.via))).toEqual(new Set(['voice', 'tool']));
  },
  WHOLE_START_MS,
);
