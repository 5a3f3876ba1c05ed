import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Person } from '../machines/vocabulary.ts';

import type { CueSheet } from '../src/session/cue-sheet.ts';
import { encodeWav } from '../src/voice/audio/wav-encode.ts';
import { slugOf } from './build.ts';
import { type Line, linesOfGoodStart } from './good-start.ts';
import { synthesize } from './synthesize.ts';

/** Who is heard with which voice: men and a woman, from two synthesizers. */
const voices = {
  technician: 'flite-rms',
  second: 'flite-slt',
  supervisor: 'flite-awb',
} as const satisfies Record<Person, string>;

/** Where seconds count, people answer at once. */
const HASTE_MS = 200;
const USUAL_MS = 600;

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Writes the cue sheet for one demo profile; replies that both profiles ask for are shared. */
async function buildSession(profile: string): Promise<void> {
  const lines = await linesOfGoodStart(profile);
  // Questioned in the same state, recorded people say the same again by themselves.
  const isSaidAgain = ({ when, says }: Line, index: number) =>
    lines[index - 1]?.when === when && lines[index - 1]?.says === says;
  const once = lines.filter((line, index) => !isSaidAgain(line, index));
  const cues = once.map(({ when, says, by }) => {
    const wav = `replies/${by}-${slugOf(says)}.wav`;
    writeFileSync(here(`sessions/${wav}`), encodeWav(synthesize(voices[by], says)));
    return { when, says, wav, afterMs: when.startsWith('firstFire.oilPressure') ? HASTE_MS : USUAL_MS };
  });
  const sheet: CueSheet = {
    schema: 'first-fire-cues/1',
    title: `A whole first start on ${profile}, all going well; invented engine and people`,
    made: `npm run fixtures:session; ${Object.entries(voices)
      .map(([person, voice]) => `${person}: ${voice}`)
      .join(', ')}`,
    cues,
  };
  writeFileSync(here(`sessions/${profile}.cues.json`), `${JSON.stringify(sheet, null, 2)}\n`);
  console.log(`${profile}: ${cues.length} replies`);
}

rmSync(here('sessions'), { recursive: true, force: true });
mkdirSync(here('sessions/replies'), { recursive: true });
for (const profile of ['demo-six', 'demo-four']) await buildSession(profile);
