import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { addFiles } from '../../src/archive/add-files.ts';
import { openArchive } from '../../src/archive/open.ts';
import { pastStarts } from '../../src/archive/past-starts.ts';
import { loadProfile } from '../../src/profile/load.ts';
import { another, opened, wholeSession } from './sessions.ts';

const folder = mkdtempSync(join(tmpdir(), 'past-starts-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const six = await loadProfile('demo-six');

it('the earlier starts of an engine are the sound, signed ones of its own profile, practice apart', async () => {
  const model = await wholeSession(join(folder, 'model.jsonl'));
  const later = { ...six, version: 2, sensors: six.sensors.slice(1) };
  const rebuilt = { ...six, version: 3, oil: { ...six.oil, capacityL: six.oil.capacityL + 2 } };
  const texts = [
    ...[3, 4, 5].map(seconds => another(model, { oilPressureSeconds: seconds, daysLater: seconds })),
    // A later version that changed nothing that a start hangs on.
    another(opened(model, { profile: later }), { oilPressureSeconds: 6, daysLater: 6 }),
    another(opened(model, { profile: rebuilt }), { oilPressureSeconds: 70, daysLater: 7 }),
    another(opened(model, { rehearsal: true }), { oilPressureSeconds: 2, daysLater: 8 }),
    // Not signed off: it ends before.
    another(model.slice(0, -20), { oilPressureSeconds: 80, daysLater: 9 }),
    // Altered.
    another(model, { oilPressureSeconds: 90, daysLater: 10 }).replace('"seconds":90', '"seconds":91'),
  ];
  const files = texts.map((text, index) => {
    const path = join(folder, `start-${index}.jsonl`);
    writeFileSync(path, text);
    return path;
  });
  const archive = await openArchive(join(folder, 'archive.sqlite'));
  try {
    for await (const _ of addFiles(archive, files));
    const past = await pastStarts(archive, { profile: six });
    expect(past['oil-pressure-time']).toEqual([6, 5, 4, 3]);
    expect(past['cranking-voltage']).toEqual([10.4, 10.4, 10.4, 10.4]);
    expect(past['warm-up-pace']).toHaveLength(4);
    expect((await pastStarts(archive, { profile: six, rehearsal: true }))['oil-pressure-time']).toEqual([2]);
    expect((await pastStarts(archive, { profile: rebuilt }))['oil-pressure-time']).toEqual([70]);
  } finally {
    await archive.close();
  }
});
