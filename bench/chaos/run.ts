import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as wait } from 'node:timers/promises';
import type { Role } from '../../src/server/protocol/index.ts';
import { Chance } from './chance.ts';
import { Device, type Who } from './device.ts';
import { type Disk, openDisk } from './disk.ts';
import { Faults, leftOut, type World } from './faults.ts';
import { Floods } from './floods.ts';
import { Ledger } from './ledger.ts';
import { type Crew, facesOf, type Led, lead } from './people.ts';
import { compare, isReplaced, look, type RecordFound, recordsIn } from './records.ts';
import { ServerProcess } from './server.ts';
import { ShopCalls } from './shop-calls.ts';
import { type MeasuredStop, measureStop } from './stops.ts';
import { type Ended, Strangers } from './strangers.ts';
import { mustBeZero, type Outcome } from './table.ts';
import { Terminal } from './terminal.ts';
import { heldLocally, sha256Of } from './uploads.ts';

/** Names that never look like the number of a second session. */
const NAMES = ['north', 'east', 'south', 'west', 'yard', 'pit', 'hall', 'dock'] as const;

export interface ChaosOptions {
  readonly minutes: number;
  readonly bays: number;
  readonly seed: number;
  readonly tell: (sentence: string) => void;
}

/** Lets everything go wrong at once for so long, and finds out what became of it. */
export async function chaos({ minutes, bays, seed, tell }: ChaosOptions): Promise<Outcome> {
  const scratch = await mkdtemp(join(tmpdir(), 'chaos-'));
  const disk = await openDisk(scratch);
  const names = NAMES.slice(0, bays);
  let isKept = true;
  try {
    tell(`The shop is on ${disk.kind}; sessions are being held as tablets do alone.`);
    const locals = await heldLocally(scratch, names, seed);
    const server = await ServerProcess.start(join(disk.folder, 'shop'), names, scratch);
    try {
      const outcome = await withServer(server, { minutes, bays, seed, tell }, names, scratch, disk, locals);
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
  { minutes, bays, seed, tell }: ChaosOptions,
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
  const goesOn = () => performance.now() - beganMs < minutes * 60_000;
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

  const paths = (await Promise.all([server.shop, server.cwd, terminals].map(recordsIn))).flat();
  const found: RecordFound[] = [];
  for (const path of paths) found.push(await look(path));
  const replaced = found.filter(record => record.doubts.length > 0 && isReplaced(record, found));
  // The disk was full when it was to be gone on with: the server said so, and a new session was begun.
  const cutShort = found.filter(
    record => record.isTorn && !replaced.includes(record) && server.allTold.includes(record.path),
  );
  const records = found.filter(record => !replaced.includes(record) && !cutShort.includes(record));
  for (const { device } of ended)
    if (found.some(({ devices }) => devices.has(device)))
      strangers.effects.push(`a command of the ended pairing ${device} is on a record`);
  for (const { path, sha256 } of found)
    if (strangers.forged.has(sha256)) strangers.effects.push(`a forged record was kept: ${path}`);
  for (const crew of crews) {
    const own = new Set(facesOf(crew).map(({ connection }) => connection.device));
    for (const { path, devices } of found.filter(record => record.path.includes(`-${crew.bay}`)))
      for (const device of devices)
        if (!own.has(device))
          strangers.effects.push(`a command of ${device} is on a record of ${crew.bay}: ${path}`);
  }
  const missing: string[] = [];
  for (const { keptAs, sha256 } of locals) {
    if (keptAs === null) continue;
    const bytes = await readFile(join(server.shop, `${keptAs}.jsonl`)).catch(() => Buffer.alloc(0));
    if (sha256Of(bytes) !== sha256) missing.push(keptAs);
    if (found.filter(record => record.sha256 === sha256).length > 1)
      blame(`${keptAs} was kept more than once.`);
  }
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
      sent: locals.reduce((sum, { sent }) => sum + sent, 0),
      kept: locals.filter(({ keptAs }) => keptAs).length,
      missing,
    },
    strangers,
    startedAnew: server.runs,
    didNotComeUp: server.didNotComeUp,
    ownDelayMs: { p99: delay.percentile(99) / 1e6, longest: delay.max / 1e6 },
    blamed,
  };
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

async function pairAll(
  server: ServerProcess,
  ledger: Ledger,
  calls: ShopCalls,
  names: readonly string[],
): Promise<{ readonly crews: Crew[]; readonly ended: Ended[] }> {
  let devices = 0;
  const pair = async (bay: string, role: Role, name: string): Promise<Who> => {
    devices += 1;
    const address = `127.0.1.${devices}`;
    const before = server.codeOf(bay, role);
    const answer = await calls.pair(before, name, address);
    if (answer?.status !== 200) throw new Error(`${name} could not be paired in ${bay}: ${answer?.body}`);
    // The terminal shows the next code.
    while (server.codeOf(bay, role) === before) await wait(20);
    return { name, role, bay, token: JSON.parse(answer.body).token, address };
  };
  const connected = async (bay: string, role: Role, name: string): Promise<Device> => {
    const device = new Device(await pair(bay, role, name), server, ledger);
    while (device.state === null) await wait(20);
    return device;
  };
  const crews: Crew[] = [];
  const ended: Ended[] = [];
  for (const bay of names) {
    crews.push({
      bay,
      technician: await connected(bay, 'technician', 'tablet'),
      otherLeader: await connected(bay, 'technician', 'other tablet'),
      second: await connected(bay, 'second', 'telephone'),
      flooder: await connected(bay, 'technician', 'flooder'),
      supervisor: bay === names[0] ? await connected(bay, 'supervisor', 'office') : null,
    });
    const gone = await connected(bay, 'second', 'let go of');
    const device = gone.connection.device;
    await gone.do({ do: 'forget', device }, 2000);
    gone.close();
    ended.push({ device, token: gone.who.token, address: gone.who.address });
  }
  return { crews, ended };
}
