/**
 * Writes docs/random-profiles.md: engines by chance that the interview can make, each loaded, built into a machine and
 * rehearsed to its end by the virtual technician, and as many profiles broken in one place.
 *
 *     npm run random-profiles -- --profiles 1000 --broken 500 --processes 16
 *
 * A rehearsal takes four to six seconds of one processor. What came of each is kept in `.cache/random-profiles.jsonl`, so
 * that a run that was ended goes on where it was (`--anew` begins again); `--profiles 0` only writes what is there.
 * Without `--write` the table is only printed.
 */
import { fork } from 'node:child_process';
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { buildFirstStart } from '../machines/first-start.ts';
import { coolantFill } from '../machines/limits/coolant.ts';
import { fuelAdvice } from '../machines/limits/fuel.ts';
import { gradesForNight } from '../machines/limits/oil.ts';
import { profileData } from '../src/interview/build.ts';
import { ProfileError, parseProfile } from '../src/profile/parse.ts';
import { type Profile, profileSchema } from '../src/profile/schema.ts';
import { seeded } from '../src/rehearsal/random.ts';
import { NIGHT_COLDER_K } from '../src/rehearsal/trainee/gauge-value.ts';
import { dayOf } from '../src/terminal/engine/show.ts';
import { broken } from '../tests/interview/broken.ts';
import { randomInterview } from '../tests/interview/random-interview.ts';
import { rehearseFast } from '../tests/rehearsal/run.ts';

interface Made {
  readonly seed: number;
  readonly use: string;
  /** How far it came: the first of these that went wrong, or signed off. */
  readonly end: 'notMade' | 'refused' | 'noMachine' | 'signedOff' | 'ended' | 'left';
  readonly why: string;
  readonly sessionS: number;
  /** Nothing that is allowed for it stands the weather that was drawn: it was rehearsed in warmer air. */
  readonly warmer?: boolean;
}

const airC = [5, 20, -5, 30] as const;

/** Whether a mix of coolant, an oil and a fuel are allowed for this engine in this weather: else nobody may start it. */
function isServed(profile: Profile, ambientC: number): boolean {
  const day = dayOf(profile, ambientC, ambientC - NIGHT_COLDER_K);
  return [coolantFill(day), gradesForNight(day), fuelAdvice(day)].every(({ ok }) => ok);
}

/** As far as the machine: the profile that came of it, or what went wrong. */
function build(seed: number): { readonly data: unknown; readonly profile: Profile } | Made {
  const made = (end: Made['end'], why: string, use = ''): Made => ({ seed, use, end, why, sessionS: 0 });
  let data: unknown;
  try {
    // Every third person answers everything; the others take the rest as it is put forward.
    data = profileData(randomInterview(seed, seed % 3 === 0));
  } catch (error) {
    return made('notMade', String(error));
  }
  const parsed = profileSchema.safeParse(data);
  if (!parsed.success)
    return made(
      'refused',
      parsed.error.issues.map(issue => `${issue.path.join('.')}: ${issue.message}`).join('; '),
    );
  const use = parsed.data.use.kind;
  try {
    buildFirstStart(parsed.data);
  } catch (error) {
    return made('noMachine', String(error), use);
  }
  return { data, profile: parsed.data };
}

async function tryOne(seed: number): Promise<Made> {
  const built = build(seed);
  if ('end' in built) return built;
  const { data, profile } = built;
  const path = join(mkdtempSync(join(tmpdir(), 'profile-')), 'engine.json');
  writeFileSync(path, JSON.stringify(data));
  const drawnC = airC[seed % airC.length] ?? 5;
  const ambientC =
    [drawnC, ...airC.filter(other => other > drawnC)].find(each => isServed(profile, each)) ?? drawnC;
  const { debrief, said } = await rehearseFast([], {
    profileName: path,
    seed,
    ambientC,
    withBus: seed % 2 === 0,
  });
  const stop = debrief.stops.filter(({ step }) => !step.startsWith('job.stop')).at(-1);
  const why =
    debrief.outcome === 'signedOff' ? '' : `${stop?.step ?? ''} ${stop?.cause ?? ''}: ${said.at(-8) ?? ''}`;
  return {
    seed,
    use: profile.use.kind,
    end: debrief.outcome,
    why,
    sessionS: debrief.sessionS,
    warmer: ambientC !== drawnC,
  };
}

const KEPT = '.cache/random-profiles.jsonl';

/** What came of earlier runs. */
const kept = (): Made[] =>
  existsSync(KEPT)
    ? readFileSync(KEPT, 'utf8')
        .split('\n')
        .filter(line => line !== '')
        .map((line): Made => JSON.parse(line))
    : [];

const { values } = parseArgs({
  options: {
    profiles: { type: 'string', default: '1000' },
    broken: { type: 'string', default: '500' },
    anew: { type: 'boolean', default: false },
    processes: { type: 'string', default: '2' },
    write: { type: 'boolean', default: false },
    worker: { type: 'string' },
  },
});

/** One of several processes: every so many seeds are its own. */
async function work(seeds: readonly number[]): Promise<void> {
  for (const seed of seeds) process.send?.(await tryOne(seed));
}

function share(seeds: readonly number[], told: (made: Made) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const worker = fork(new URL(import.meta.url).pathname, ['--worker', seeds.join(',')], {
      execArgv: ['--import', 'tsx'],
    });
    worker.on('message', message => told(message as Made));
    worker.on('exit', code => (code === 0 ? resolve() : reject(new Error(`A worker ended with ${code}.`))));
  });
}

/** Profiles with one thing broken, of which no sentence names the field. */
function unnamed(count: number): string[] {
  const engines = [1, 2, 3, 5, 7, 8].map(seed => profileData(randomInterview(seed)));
  return Array.from({ length: count }, (_, index) => index + 1).flatMap(seed => {
    const { text, field } = broken(engines[seed % engines.length], seeded(seed, 'broken'));
    try {
      parseProfile(text, 'broken');
      return [`${seed}: loaded, with a broken ${field}`];
    } catch (error) {
      if (!(error instanceof ProfileError)) throw error;
      return error.faults.some(fault => fault.includes(field)) ? [] : [`${seed}: ${field}`];
    }
  });
}

if (values.worker !== undefined) await work(values.worker.split(',').map(Number));
else {
  mkdirSync('.cache', { recursive: true });
  if (values.anew) rmSync(KEPT, { force: true });
  const all = kept();
  const done = new Set(all.map(({ seed }) => seed));
  const count = Number(values.profiles);
  const seeds = Array.from({ length: count }, (_, index) => index + 1).filter(seed => !done.has(seed));
  const processes = Math.min(seeds.length, Number(values.processes));
  await Promise.all(
    Array.from({ length: processes }, (_, own) =>
      share(
        seeds.filter((_seed, index) => index % processes === own),
        made => {
          all.push(made);
          appendFileSync(KEPT, `${JSON.stringify(made)}\n`);
          console.error(`${all.length}, seed ${made.seed}: ${made.end} ${made.why}`);
        },
      ),
    ),
  );
  const missed = unnamed(Number(values.broken));
  // Another run may have gone on meanwhile.
  const lines = page(kept(), Number(values.broken), missed);
  console.log(lines);
  if (values.write) writeFileSync('docs/random-profiles.md', lines);
  process.exitCode = missed.length > 0 || kept().some(({ end }) => end !== 'signedOff') ? 1 : 0;
}

function page(all: readonly Made[], tried: number, missed: readonly string[]): string {
  const uses = [...new Set(all.map(({ use }) => use))].sort();
  const ends = ['signedOff', 'ended', 'left', 'noMachine', 'refused', 'notMade'] as const;
  const count = (end: Made['end']) => all.filter(made => made.end === end).length;
  const row = (use: string) => {
    const own = all.filter(made => made.use === use);
    return `| ${use === '' ? 'not told' : use} | ${own.length} | ${ends.map(end => own.filter(made => made.end === end).length).join(' | ')} |`;
  };
  const bad = all.filter(({ end }) => end !== 'signedOff').sort((one, other) => one.seed - other.seed);
  return `${[
    '# Engines by chance',
    '',
    'Made by `npm run random-profiles`: answers by chance to the interview (`src/interview`), every third time to all of',
    'its questions, else with the rest as it is put forward; the profile loaded, built into a machine whose gates hold,',
    'and rehearsed to its end by the virtual technician at 5, 20, -5 or 30 °C, every second one with its bus where it',
    'has one. And profiles broken in one place: each has to get a sentence that names the field.',
    '',
    `Of ${all.length} engines ${count('signedOff')} came to sign-off:`,
    '',
    '| what it drives | engines | signed off | ended without | left | no machine | refused | not made |',
    '|---|---|---|---|---|---|---|---|',
    ...uses.map(row),
    '',
    `${all.filter(({ warmer }) => warmer).length} of them were rehearsed in warmer air than was drawn: no coolant, oil or fuel that is allowed`,
    'for them stands it, and the tool rightly begins nothing.',
    '',
    `Of ${tried} broken profiles ${tried - missed.length} got a sentence that names the field.`,
    ...(bad.length + missed.length > 0 ? ['', 'What went wrong:', ''] : []),
    ...bad.map(({ seed, end, why }) => `- seed ${seed}, ${end}: ${why.replaceAll('\n', ' ').slice(0, 200)}`),
    ...missed.map(each => `- broken ${each}`),
  ].join('\n')}\n`;
}
