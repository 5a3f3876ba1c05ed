import { benchArchive } from './archive.ts';
import { benchBus } from './bus.ts';
import { benchEngineering } from './engineering.ts';
import { benchEngineeringFits } from './engineering-fits.ts';
import { benchHumans } from './human.ts';
import { benchJobs } from './jobs.ts';
import { benchMachine } from './machine.ts';
import { benchProcedureHearing } from './procedure-hearing.ts';
import { benchRecord } from './record.ts';
import { benchRehearsal } from './rehearsal.ts';
import { benchReport } from './report.ts';
import { benchServer } from './server.ts';
import { benchSpeech } from './speech.ts';
import { benchStop } from './stop.ts';
import { benchVoice } from './voice.ts';

/** Programs of their own: what runs in a browser is checked with the page's types. */
const alone = (file: string) => import(new URL(file, import.meta.url).href);

/** `npm run bench [name ...]`: all benches, or those that are named. Timings are shown, never judged. */
const benches: Readonly<Record<string, () => unknown>> = {
  engineering: () => benchEngineering(),
  fits: () => benchEngineeringFits(),
  bus: () => benchBus(),
  archive: () => benchArchive(),
  rehearsal: () => benchRehearsal(),
  report: () => benchReport(),
  record: () => benchRecord(),
  speech: () => benchSpeech(),
  machine: () => benchMachine(),
  procedure: () => benchProcedureHearing(),
  voice: () => benchVoice(),
  server: () => benchServer(),
  jobs: () => benchJobs(),
  stop: () => benchStop(),
  humans: () => benchHumans(),
  page: () => alone('./page/run-opening.ts'),
  tablet: () => alone('./page/run-tablet-load.ts'),
};

const names = process.argv.slice(2);
const unknown = names.filter(name => !(name in benches));
if (unknown.length > 0) {
  console.error(`No bench is called ${unknown.join(', ')}; there are ${Object.keys(benches).join(', ')}.`);
  process.exitCode = 2;
} else {
  for (const [name, bench] of Object.entries(benches)) {
    if (names.length > 0 && !names.includes(name)) continue;
    console.log(`\n== ${name}`);
    await bench();
  }
}
