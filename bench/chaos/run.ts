import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as wait } from 'node:timers/promises';
import { Chance } from './chance.ts';
import { type Disk, openDisk } from './disk.ts';
import { Faults, leftOut, type World } from './faults.ts';
import { Floods } from './floods.ts';
import { Ledger } from './ledger.ts';
import { lookBack } from './look-back.ts';
import { pairAll } from './pair-all.ts';
import { facesOf, type Led, lead } from './people.ts';
import { compare } from './records.ts';
import { ServerProcess } from './server.ts';
import { ShopCalls } from './shop-calls.ts';
import { type MeasuredStop, measureStop } from './stops.ts';
import { Strangers } from './strangers.ts';
import { mustBeZero, type Outcome } from './table.ts';
import { Terminal } from './terminal.ts';
import { heldLocally, sendTheRest } from './uploads.ts';

/** Names that never look like the number of a second session. */
const NAMES = ['north', 'east', 'south', 'west', 'yard', 'pit', 'hall', 'dock'] as const;

export interface ChaosOptions {
  readonly minutes: number;
  readonly bays: number;
  readonly seed: number;
  readonly tell: (sentence: string) => void;
  /** Ends it before its time, with all that is to be looked at then. */
  readonly ending: AbortSignal;
}

/** Lets everything go wrong at once for so long, and finds out what became of it. */
export async function chaos(options: ChaosOptions): Promise<Outcome> {
  const { bays, seed, tell } = options;
  const scratch = await mkdtemp(join(tmpdir(), 'chaos-'));
  const disk = await openDisk(scratch);
  const names = NAMES.slice(0, bays);
  let isKept = true;
  try {
    tell(`The shop is on ${disk.kind}; sessions are being held as tablets do alone.`);
    const locals = await heldLocally(scratch, names, seed);
    const server = await ServerProcess.start(join(disk.folder, 'shop'), names, scratch);
    try {
      const outcome = await withServer(server, options, names, scratch, disk, locals);
      isKept = mustBeZero(outcome).some(([, count]) => count > 0);
      return outcome;
    } finally {
      server.killAtOnce();
    }
  } finally {
    if (isKept)
      await cp(disk.folder, join(scratch, 'kept'), {
        recursive: true,
        filter: from => !/filler|flood/.test(from),
      }).catch(() => {});
    await disk.remove();
    if (isKept) tell(`What it left is kept in ${scratch}.`);
    else await rm(scratch, { recursive: true, force: true });
  }
}

async function withServer(
  server: ServerProcess,
  { minutes, bays, seed, tell, ending }: ChaosOptions,
  names: readonly string[],
  scratch: string,
  disk: Disk,
  locals: Awaited<ReturnType<typeof heldLocally>>,
): Promise<Outcome> {
  const chance = new Chance(seed);
  const ledger = new Ledger(server);
  const calls = new ShopCalls(server);
  const floods = new Floods(server.base);
  const blamed: string[] = [];
  const blame = (sentence: string) => {
    blamed.push(sentence);
    tell(sentence);
  };
  tell('The server is up; the devices are being paired.');
  const { crews, ended } = await pairAll(server, ledger, calls, names);
  const strangers = new Strangers(server, calls, ended);
  const terminals = join(scratch, 'terminal');
  await mkdir(terminals);
  const terminal = new Terminal(terminals, server.cwd, new Chance(seed + 1));
  const world: World = {
    chance,
    server,
    disk,
    crews,
    calls,
    floods,
    strangers,
    terminal,
    locals,
    ledger,
    blame,
  };
  const faults = new Faults(world);
  const led: Led = { begun: 0, answered: 0, doubleTouches: 0, doubleTaken: 0 };
  const stops: MeasuredStop[] = [];

  const delay = monitorEventLoopDelay({ resolution: 10 });
  delay.enable();
  const beganMs = performance.now();
  const goesOn = () => !ending.aborted && performance.now() - beganMs < minutes * 60_000;
  tell(`Chaos for ${minutes} minutes.`);
  const talking = setInterval(
    () => tell(`${stops.length} stops, ${led.answered} answers, now: ${faults.active}`),
    30_000,
  );
  try {
    await Promise.all([
      ...crews.map((crew, nth) => lead(crew, new Chance(seed + 10 + nth), led, goesOn, blame)),
      sendStops(world, faults, stops, goesOn),
      faults.go(goesOn),
      terminal.lead(goesOn),
    ]);
  } finally {
    clearInterval(talking);
    terminal.killAtOnce();
    floods.end();
  }
  const ranMinutes = (performance.now() - beganMs) / 60_000;
  delay.disable();
  tell('It is over; what is left is being ended and looked at.');
  // What was under way comes to its end, and all devices come back.
  await wait(5000);
  await sendTheRest(locals, crews, calls, blame);
  await writeFile(join(scratch, 'told.txt'), server.allTold);
  for (const crew of crews)
    for (const device of facesOf(crew)) {
      if (device.turnedAway.some(sentence => sentence.includes('not paired')))
        blame(`${device.who.name} of ${crew.bay} was turned away: ${device.turnedAway.join(' ')}`);
      device.close();
    }
  for (const told of server.endedByItself) blame(`The server ended by itself: ${told}`);
  const exitCode = await server.end();
  if (exitCode !== 0) blame(`The server ended with exit code ${exitCode}.`);
  for (const sentence of terminal.refusedToResume)
    blame(`A session in a terminal could not be resumed: ${sentence}`);

  const { found, replaced, cutShort, records, missing } = await lookBack(world, terminals, ended, blame);
  return {
    seed,
    bays,
    ranMinutes,
    disk: disk.kind,
    faults: faults.done,
    leftOut: leftOut(world),
    stops,
    terminal,
    led,
    kept: compare(ledger, found),
    records,
    replaced,
    cutShort,
    locals: {
      held: locals.length,
      sent: locals.reduce((sum, { sent }) => sum + sent, 0),
      kept: locals.filter(({ keptAs }) => keptAs).length,
      refusals: together(locals.map(({ refusals }) => refusals)),
      missing,
    },
    strangers,
    startedAnew: server.runs,
    didNotComeUp: server.didNotComeUp,
    ownDelayMs: { p99: delay.percentile(99) / 1e6, longest: delay.max / 1e6 },
    blamed,
  };
}

/** The same reason of all of them in one line. */
function together(all: readonly ReadonlyMap<string, number>[]): string[] {
  const times = new Map<string, number>();
  for (const [why, often] of all.flatMap(each => [...each])) times.set(why, (times.get(why) ?? 0) + often);
  return [...times].map(([why, often]) => `${often} times: ${why}`);
}

const stopWords = ['Stop!', 'please stop now', 'stop'];

/** Stops at random moments from random devices, each measured for itself. */
async function sendStops(
  { chance, crews, server }: World,
  faults: Faults,
  stops: MeasuredStop[],
  goesOn: () => boolean,
): Promise<void> {
  const going: Promise<void>[] = [];
  while (goesOn()) {
    await wait(chance.between(300, 5000));
    const crew = chance.one(crews);
    const device = chance.one(facesOf(crew));
    // A page sends stop for what is typed and means it; a device that sends the words is understood as well.
    const text = device.isThere && server.isUp && chance.happens(0.2) ? chance.one(stopWords) : undefined;
    const measuring = measureStop(device, facesOf(crew), server, faults.active, text).then(stop => {
      if (text === undefined || stop.between === 'nothing') stops.push(stop);
    });
    going.push(measuring);
  }
  await Promise.all(going);
}
