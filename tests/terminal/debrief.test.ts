import { expect, it } from 'vitest';
import { english } from '../../prompts/en/index.ts';
import { en } from '../../src/terminal/face/words/en.ts';
import { debriefLines } from '../../src/terminal/rehearse/debrief-words.ts';

it('a stop word that was tried out is not told as a stop without a cause', () => {
  const stops = [
    { atS: 60, step: 'job.stopTechnician', cause: null },
    { atS: 600, step: 'warmUp.watch', cause: null },
    { atS: 660, step: 'job.stopTechnician', cause: 'oilLeak' },
  ];
  const lines = debriefLines(
    { outcome: 'left', sessionS: 700, faults: [], neverCame: [], contradictions: [], stops, unclear: 0 },
    { words: en.debrief, language: english, units: 'us' },
  );
  expect(lines.slice(-3).map(line => line.replace(/.*Cause: /, ''))).toEqual([
    'the word was tried out.',
    'none named.',
    'oil leak.',
  ]);
});
