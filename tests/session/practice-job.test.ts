import { describe, expect, it } from 'vitest';
import { languages } from '../../prompts/index.ts';
import { demoJob, inventedOn, practiceJob } from '../../src/session/demo-job.ts';
import { parseJobCard } from '../../src/session/job-card.ts';
import { demoGenset, demoSix } from '../machines/helpers/profiles.ts';

const own = { ...demoGenset, invented: false, engine: { ...demoGenset.engine, name: 'IE-5.2T' } };

describe('the job card of a practice', () => {
  it('is of the engine that is practised on, by people who are marked as invented', () => {
    expect(practiceJob(own, languages.en)).toEqual({
      vehicle: 'Invented generating set',
      engine: 'IE-5.2T',
      technician: 'Ada Example (invented)',
      second: 'Ben Example (invented)',
      supervisor: 'Cleo Example (invented)',
    });
    expect(practiceJob(own, languages.fr)).toMatchObject({ technician: 'Ada Example (inventé)' });
    expect(parseJobCard(practiceJob(own, languages.es), 'here')).toEqual(practiceJob(own, languages.es));
  });

  it('starts no real engine, whichever of its people is left on it', () => {
    for (const job of [demoJob, practiceJob(own, languages.en)]) {
      expect(inventedOn(job, own)).toMatch(/^"Ada Example.*" is invented; .* its vehicle\.$/);
      expect(inventedOn({ ...job, technician: 'A. Smith', second: 'B. Jones' }, own)).toMatch(/^"Cleo/);
      expect(inventedOn(job, demoSix)).toBeNull();
    }
    const real = { ...demoJob, technician: 'A. Smith', second: 'B. Jones', supervisor: 'C. Brown' };
    expect(inventedOn(real, own)).toBeNull();
  });
});
