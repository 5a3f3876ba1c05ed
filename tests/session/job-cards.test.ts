import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { demoJob } from '../../src/session/demo-job.ts';
import { JobCardError, parseJobCard } from '../../src/session/job-card.ts';
import { loadJobCard } from '../../src/session/job-card-file.ts';
import { scratchFolderForAll } from '../helpers/scratch.ts';

const card = { vehicle: 'V', engine: 'E', technician: 'T', second: 'S', supervisor: 'U' };

describe('a job card', () => {
  it('names vehicle, engine and the three people', () => {
    expect(parseJobCard(card, 'the card')).toEqual(card);
  });

  it('may hold what was built in and filled in, as it was written down', () => {
    const whole = {
      ...card,
      serial: 'INV 000 123',
      hours: '0',
      oilUsed: '15W-40, 15 L',
      coolantUsed: 'ethylene, half and half',
      filterParts: 'F1, F2, O7',
    };
    expect(parseJobCard(whole, 'the card')).toEqual(whole);
    expect(() => parseJobCard({ ...card, serial: 7 }, 'the card')).toThrow(/serial: /);
  });

  it('is refused with a line for each fault, and one for what it holds', () => {
    const { engine: _, ...lacking } = card;
    expect(() => parseJobCard({ ...lacking, second: 7 }, 'the card')).toThrow(
      /^Job card the card: engine: .+\nsecond: .+\nIt holds vehicle, engine, technician, second and supervisor, and may hold serial, .+\.$/,
    );
    expect(() => parseJobCard('nothing', 'the card')).toThrow(/^Job card the card: the card: .+\nIt holds/);
    expect(() => parseJobCard({ ...card, colour: 'red' }, 'the card')).toThrow(JobCardError);
    expect(new JobCardError('').name).toBe('JobCardError');
  });

  it('for practice is one, of invented people', () => {
    expect(parseJobCard(demoJob, 'the demo')).toEqual(demoJob);
    expect(Object.values(demoJob)).toEqual([
      expect.stringMatching(/^Invented /),
      expect.stringMatching(/^Invented /),
      ...Array.from({ length: 3 }, () => expect.stringMatching(/ Example$/)),
    ]);
    expect(new Set(Object.values(demoJob)).size).toBe(5);
  });
});

describe('the file of a job card', () => {
  const path = join(scratchFolderForAll(), 'card.json');

  it('is read', async () => {
    writeFileSync(path, JSON.stringify(card));
    expect(await loadJobCard(path)).toEqual(card);
  });

  it('that is not there, is no JSON or no card is told so', async () => {
    await expect(loadJobCard(`${path}.no`)).rejects.toThrow(
      new JobCardError(
        `Job card ${path}.no cannot be read: there is no such file or folder; give the path of a JSON file.`,
      ),
    );
    writeFileSync(path, 'no JSON');
    await expect(loadJobCard(path)).rejects.toThrow(
      new JobCardError(
        `Job card ${path} is not JSON: it does not begin with "{"; correct it or leave it out.`,
      ),
    );
    writeFileSync(path, '{}');
    await expect(loadJobCard(path)).rejects.toThrow(/^Job card .+: vehicle: .+\nengine: .+/);
  });
});
