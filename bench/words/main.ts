/**
 * `npm run words`: leads a start in which all goes well, of each demo engine, by voice and by keys, through the real
 * session, and prints how many answers are asked for and how many seconds the tool speaks, for each phase and person.
 * `-- --write` writes docs/words.md, beside what was measured before read-backs were taken out (docs/words-before.json);
 * `-- --json` prints the measurement for that file; `-- --quick` takes 60 ms a letter instead of the voice's own time;
 * `-- --list` prints every answer, with what was said before it.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

import { CachedSynthesizer } from '../../src/voice/speakers/cached-synthesizer.ts';
import { FliteSynthesizer } from '../../src/voice/speakers/flite.ts';
import { speakingTime } from '../../tests/helpers/session-rig.ts';
import { type Answer, leadGoodStart, means } from './lead.ts';
import { documentOf, type Measured, summaryOf } from './table.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const flite = new FliteSynthesizer();
/** All sentences of all starts: most are the same. */
const voice = process.argv.includes('--quick') ? speakingTime : new CachedSynthesizer(flite, 5000);

/** Those in vehicles: the others were not asked for so many answers before. */
const vehicles = ['demo-six', 'demo-four'];

const list = process.argv.includes('--list');
const tell = ({ state, person, said, reply }: Answer) =>
  console.log(`${state} (${person})\n    ${said.join('\n    ')}\n    > ${reply}`);

const measured: Measured[] = [];
for (const profile of vehicles)
  for (const by of means) {
    const shares = await leadGoodStart(profile, by, voice, list ? tell : undefined);
    measured.push({ profile, by, shares });
    console.error(summaryOf({ profile, by, shares }));
  }
flite.close();

const before: Measured[] = JSON.parse(readFileSync(here('../../docs/words-before.json'), 'utf8'));
const text = documentOf(measured, before);
if (process.argv.includes('--json')) console.log(JSON.stringify(measured));
else if (process.argv.includes('--write')) writeFileSync(here('../../docs/words.md'), text);
else console.log(text);
