/** Draws the procedure of each invented engine. Run: npm run chart */
import { writeFileSync } from 'node:fs';
import { demoProfiles, loadProfile } from '../../src/profile/load.ts';
import { chart } from './draw.ts';

for (const name of demoProfiles) {
  const path = new URL(`../procedure-${name}.svg`, import.meta.url);
  writeFileSync(path, chart(await loadProfile(name)));
  console.log(`docs/procedure-${name}.svg`);
}
