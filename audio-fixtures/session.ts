import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { offerOf } from '../machines/moment.ts';
import type { Person } from '../machines/vocabulary.ts';
import { demoProfiles } from '../src/profile/load.ts';
import type { CueSheet } from '../src/session/cue-sheet.ts';
import { encodeWav } from '../src/voice/audio/wav-encode.ts';
import { sayNumber } from '../src/voice/number-words/say.ts';
import { goodReply, type Rig, rig } from '../tests/helpers/session-rig.ts';
import { slugOf } from './build.ts';
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

interface Line {
  readonly when: string;
  readonly says: string;
  readonly by: Person;
}

/** Figures as people say them. */
const inWords = (reply: string) => {
  const [, decimals = ''] = /^-?\d+(?:\.(\d+))?$/.exec(reply) ?? [];
  return /^-?[\d.]+$/.test(reply) ? sayNumber(Number(reply), 'grouped', decimals.length) : reply;
};

/** Everything that is said in a start where all goes well, with the state it is said in. */
async function linesOf(run: Rig): Promise<Line[]> {
  const lines: Line[] = [];
  await run.session.begin(false);
  while (run.session.moment.status === 'active') {
    const reply = goodReply(run);
    if (reply === null) {
      await run.pass(Math.max(1, (run.clock.nextMs() ?? 0) - run.clock.nowMs()));
      continue;
    }
    lines.push({ when: run.key(), says: inWords(reply), by: offerOf(run.session.moment).by });
    await run.type(reply);
    if (!run.key().startsWith('firstFire.oilPressure')) await run.pass(1500);
  }
  return lines;
}

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Writes the cue sheet for one demo profile; replies that both profiles ask for are shared. */
async function buildSession(profile: string): Promise<void> {
  const cues = (await linesOf(await rig(profile))).map(({ when, says, by }) => {
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
for (const profile of demoProfiles) await buildSession(profile);
