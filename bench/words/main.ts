/**
 * `npm run words`: leads a start in which all goes well, of each demo engine, by voice and by keys, through the real
 * session, and prints how many answers are asked for and how many seconds the tool speaks, for each phase and person.
 * `-- --write` writes docs/words.md; `-- --quick` takes 60 ms a letter instead of the voice's own time; `-- --list` prints
 * every answer, with what was said before it.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

import { CachedSynthesizer } from '../../src/voice/speakers/cached-synthesizer.ts';
import { FliteSynthesizer } from '../../src/voice/speakers/flite.ts';
import { speakingTime } from '../../tests/helpers/session-rig.ts';
import { type Answer, leadGoodStart, means } from './lead.ts';
import { documentOf, type Measured, summaryOf } from './table.ts';

const flite = new FliteSynthesizer();
/** All sentences of all starts: most are the same. */
const voice = process.argv.includes('--quick') ? speakingTime : new CachedSynthesizer(flite, 5000);

/** Those with steering and brakes, whose starts ask the most. */
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

const text = documentOf(measured);
if (process.argv.includes('--write'))
  writeFileSync(fileURLToPath(new URL('../../docs/words.md', import.meta.url)), text);
else console.log(text);
