import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Server as TlsServer } from 'node:tls';
import { RecordError, takeLock } from '../record/index.ts';
import { SystemClock } from '../session/clock.ts';
import { Bay } from './bay/bay.ts';
import { Board } from './bay/board.ts';
import type { MakeClock } from './bay/run.ts';
import { Starter, type Usual } from './bay/starter.ts';
import { type Attended, openDesk } from './desk.ts';
import { buildApp } from './http/app.ts';
import { Guard } from './http/guard.ts';
import { KnownAddresses } from './http/known-addresses.ts';
import { CodeDesk, type OpenCode } from './pairing/code-desk.ts';
import { Pairings } from './pairing/pairings.ts';
import { FolderShop } from './shop/folder-shop.ts';
import { Shop } from './shop/shop.ts';
import { AddressWatch } from './tls/address-watch.ts';
import { inUrl, machineAddresses, type PageAddresses, pageAddresses, reachableAt } from './tls/addresses.ts';
import { certificateFor, type ServerCertificate } from './tls/certificate.ts';

export interface ServeOptions {
  /** 0: any that is free. */
  readonly port: number;
  /** Address to listen at; `0.0.0.0` for all. */
  readonly host: string;
  /** Names of the bays, at least one; each has its own devices and its own session. */
  readonly bays: readonly string[];
  /** Folder of records; what the server itself keeps is in `.server` inside. */
  readonly shop: string;
  /** The shop's archive: a SQLite file, or a PostgreSQL database; a file in the shop's folder, where it is left out. */
  readonly archive?: string | undefined;
  /** Folder of the built page. */
  readonly page: string;
  /** Folder of the Vosk models that tablets may take; it need not be there. */
  readonly models: string;
  readonly usual: Usual;
  /** A sentence for the terminal. */
  readonly tell: (sentence: string) => void;
  /** There are other pairing codes to be shown. */
  readonly onCodes?: (codes: readonly OpenCode[]) => void;
  /** The clock of a session; real time, where it is left out. */
  readonly makeClock?: MakeClock;
  /** The machine's addresses, asked again as the server runs; its own, where it is left out. */
  readonly addresses?: () => readonly string[];
  /** Wall clock by which codes and pairings run out. */
  readonly wallMs?: () => number;
  /** Steady clock by which rates are kept. */
  readonly steadyMs?: () => number;
  /** How long a socket may be open and say nothing of use; some seconds, where it is left out. */
  readonly patienceMs?: number;
  /** After which a device that leads and has left is not waited for beside an engine that turns; some seconds, where it is left out. */
  readonly awayMs?: number;
}

export interface RunningServer extends Attended {
  readonly port: number;
  /** Addresses of the page, as URLs. */
  readonly urls: PageAddresses;
  /** SHA-256 of the certificate, to be compared with what the browser shows. */
  readonly fingerprint: string;
  /** SHA-256 of the shop's authority, to be compared before a device is told to trust it. */
  readonly authority: string;
  /** The pairing codes that are open now. */
  codes(): readonly OpenCode[];
  /** Something broke, and nobody knows what hangs on it: what goes on is stopped in all bays, and all faces are told why. */
  fails(error: unknown): void;
  /** Ends the server; sessions can be gone on with by the next one. */
  close(): Promise<void>;
}

/** A server that cannot be started: one sentence. */
export class ServeError extends Error {
  override readonly name = 'ServeError';
}

/** A socket that says nothing of use for so long is closed. */
const PATIENCE_MS = 8000;

/** How often codes that ran out are made anew, while nobody asks for them, and the machine's addresses looked at. */
const CODES_LOOKED_AT_MS = 5000;

const urlAt = (address: string, port: number) => `https://${inUrl(address)}:${port}/`;

function urlsAt({ devices, itself }: PageAddresses, port: number): PageAddresses {
  return {
    devices: devices.map(address => urlAt(address, port)),
    itself: itself === null ? null : urlAt(itself, port),
  };
}

/**
 * Starts the server, and goes on with the sessions that broke off when the last one ended.
 * @throws ServeError when the folder cannot be used, another server has it, or the port is taken
 */
export async function startServer(options: ServeOptions): Promise<RunningServer> {
  const { shop: folder } = options;
  const own = join(folder, '.server');
  await mkdir(own, { recursive: true, mode: 0o700 }).catch((error: Error) => {
    throw new ServeError(`The shop's folder ${folder} cannot be used (${error.message}); choose another.`);
  });
  const lock = await lockOf(folder, own);
  try {
    const server = await serve(options, own);
    return { ...server, close: () => server.close().finally(() => lock.release()) };
  } catch (error) {
    await lock.release();
    throw error;
  }
}

/**
 * Two servers of one shop would each let the other's devices and sessions fall under the table. Where the disk takes no
 * lock, one that was killed must still be able to go on with what runs there.
 */
async function lockOf(folder: string, own: string): Promise<{ release(): Promise<void> }> {
  const path = join(own, 'server');
  try {
    return await takeLock(path);
  } catch (error) {
    if (!(error instanceof RecordError && error.code === 'inUse')) return { release: async () => {} };
    throw new ServeError(
      `Another server serves the shop's folder ${folder}; end that one first, or delete ${path}.lock if there is none.`,
    );
  }
}

const notGoneOnWith =
  'A session broke off here and is not gone on with. Its engine may be running: key off, make everything safe.';

async function serve(options: ServeOptions, own: string): Promise<RunningServer> {
  const { shop: folder, tell, wallMs = Date.now, steadyMs = () => performance.now() } = options;
  const readAddresses = options.addresses ?? machineAddresses;
  const certificate = await certificateFor(own, readAddresses());
  const tellUntrusted = ({ untrusted }: ServerCertificate) => {
    if (untrusted.length === 0) return;
    tell(
      `The shop's authority was made before this machine had the address ${untrusted.join(', ')}: devices that trust it warn there. Use another address, or take ${join(own, 'authority.json')} away and have the devices trust the new one.`,
    );
  };
  tellUntrusted(certificate);
  const pairings = await Pairings.open(join(own, 'pairings.json'), wallMs);
  const desk: CodeDesk = new CodeDesk(options.bays, wallMs, () => options.onCodes?.(desk.codes()));
  const archive = options.archive ?? join(folder, 'first-fire-archive.sqlite');
  const shop = await Shop.open(
    await FolderShop.open(folder),
    { folder, archive, unpacked: join(own, 'unpacked') },
    { owners: join(own, 'owners.jsonl'), checks: join(own, 'checks.json') },
    tell,
  );
  const makeClock: MakeClock = options.makeClock ?? (beginMs => new SystemClock(beginMs));
  const starter = await Starter.open(
    shop,
    options.usual,
    { places: join(own, 'bays.json'), engines: join(own, 'engines.json') },
    options.bays,
    makeClock,
    tell,
  );
  const bays = new Map(options.bays.map(name => [name, new Bay(name, pairings, starter, options.awayMs)]));
  for (const bay of bays.values())
    await bay
      .resume()
      .catch((error: unknown) =>
        tell(`${bay.name}: ${notGoneOnWith} ${error instanceof Error ? error.message : String(error)}`),
      );
  for (const [bay, session] of starter.elsewhere(options.bays))
    tell(`${bay}: ${notGoneOnWith} That bay is not served now; the session was ${session || 'not known'}.`);
  const board = new Board([...bays.values()]);

  const watch = new AddressWatch(readAddresses, steadyMs, (addresses, added) => {
    guard.answersAt(addresses);
    void certificateFor(own, addresses)
      .then(again => {
        const { key, cert } = again;
        // The lines that are open stay as they are.
        if (app.server instanceof TlsServer)
          app.server.setSecureContext({ key, cert, minVersion: 'TLSv1.2' });
        const reachable = reachableAt(options.host, addresses).filter(address => added.includes(address));
        const urls = reachable.map(address => urlAt(address, guard.port));
        tell(
          urls.length === 0
            ? 'This machine has lost an address; devices that were there open another one that its terminal shows.'
            : `This machine has another address now: devices open ${urls.join(' or ')}.`,
        );
        tellUntrusted(again);
      })
      .catch((error: Error) =>
        tell(`The new address of this machine has no certificate (${error.message}).`),
      );
  });
  const guard = new Guard(watch.addresses, () => watch.look());
  const app = await buildApp(
    {
      bays,
      board,
      desk,
      pairings,
      shop,
      known: new KnownAddresses(),
      incoming: join(own, 'incoming'),
      models: options.models,
      patienceMs: options.patienceMs ?? PATIENCE_MS,
      nowMs: steadyMs,
      tell,
    },
    guard,
    certificate,
    options.page,
  );
  await app.listen({ port: options.port, host: options.host }).catch((error: Error) => {
    throw new ServeError(
      `The server cannot listen at port ${options.port} (${error.message}); choose another with --port.`,
    );
  });
  const [listening] = app.addresses();
  const port = typeof listening === 'object' ? listening.port : options.port;
  guard.listensOn(port);
  const attended: Attended = {
    devices: () =>
      [...bays.values()].flatMap(bay =>
        bay.crew
          .list()
          .map(({ id, role, name, connected }) => ({ id, bay: bay.name, role, name, connected })),
      ),
    async letGo(device) {
      const bay = [...bays.values()].find(each => each.crew.list().some(({ id }) => id === device));
      await bay?.letGo(device);
      return bay !== undefined;
    },
  };
  const closeDesk = await openDesk(folder, attended, tell);
  const looking = setInterval(() => {
    desk.codes();
    watch.look();
    void pairings.keepAgain();
  }, CODES_LOOKED_AT_MS);
  return {
    port,
    urls: urlsAt(pageAddresses(options.host, watch.addresses), port),
    fingerprint: certificate.fingerprint,
    authority: certificate.authority.fingerprint,
    codes: () => desk.codes(),
    fails(error) {
      for (const bay of bays.values())
        try {
          bay.fails(error);
        } catch (again) {
          // What shows a bay may be what broke: the others are stopped all the same.
          tell(`A bay could not be shown as it is (${String(again)}); go there.`);
        }
    },
    ...attended,
    async close() {
      clearInterval(looking);
      closeDesk();
      board.close();
      await app.close();
      for (const bay of bays.values()) await bay.close();
      await shop.close();
    },
  };
}
