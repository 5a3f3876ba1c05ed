import { chmod, rm } from 'node:fs/promises';
import { connect, createServer, type Socket } from 'node:net';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { z } from 'zod';
import { roleSchema } from './protocol/index.ts';
import { OWNER_ONLY } from './state-file.ts';

const deviceSchema = z.object({
  id: z.string(),
  bay: z.string(),
  role: roleSchema,
  name: z.string(),
  connected: z.boolean(),
});
/** A paired device, as the terminal lists it. */
export type PairedDevice = Readonly<z.infer<typeof deviceSchema>>;

const askedSchema = z.discriminatedUnion('do', [
  z.strictObject({ do: z.literal('list') }),
  z.strictObject({ do: z.literal('end'), device: z.string().min(1).max(60) }),
]);
/** What may be asked at the desk. A device is named by the beginning of its id. */
export type DeskRequest = z.infer<typeof askedSchema>;

const answerSchema = z.object({
  /** All paired devices, or the one whose pairing was ended. */
  devices: z.array(deviceSchema),
  /** What went wrong; null when nothing did. */
  sentence: z.string().nullable(),
});
export type DeskAnswer = Readonly<z.infer<typeof answerSchema>>;

/** What the desk asks of a server. */
export interface Attended {
  devices(): readonly PairedDevice[];
  letGo(device: string): Promise<boolean>;
}

/** The server of this shop does not answer: one sentence. */
export class DeskError extends Error {
  override readonly name = 'DeskError';
}

/** A socket of the machine itself, in the server's own folder: whoever may open that is the shop's owner. */
const pathFor = (shop: string) => join(shop, '.server', 'desk');

const PATIENCE_MS = 10_000;

async function answer(line: string, server: Attended): Promise<DeskAnswer> {
  const asked = askedSchema.parse(JSON.parse(line));
  const devices = server.devices();
  if (asked.do === 'list') return { devices: [...devices], sentence: null };
  const [found, another] = devices.filter(({ id }) => id.startsWith(asked.device));
  if (!found)
    return { devices: [], sentence: `No paired device has an id that begins with ${asked.device}.` };
  if (another)
    return { devices: [], sentence: `More than one id begins with ${asked.device}; give more of it.` };
  await server.letGo(found.id);
  return { devices: [found], sentence: null };
}

/**
 * Answers what is asked at the terminal about a running server. The server itself reads no terminal: one that wants
 * to read in the background is halted, and its stops with it.
 * @returns what closes the desk
 */
export async function openDesk(shop: string, server: Attended, tell: (sentence: string) => void) {
  const path = pathFor(shop);
  const open = new Set<Socket>();
  const desk = createServer(socket => {
    open.add(socket);
    socket.on('close', () => open.delete(socket));
    socket.on('error', () => socket.destroy());
    socket.setTimeout(PATIENCE_MS, () => socket.destroy());
    createInterface({ input: socket }).once('line', line => {
      answer(line, server).then(
        found => socket.end(`${JSON.stringify(found)}\n`),
        () => socket.destroy(),
      );
    });
  });
  await rm(path, { force: true });
  await new Promise<void>(resolve => {
    desk.once('error', error => {
      tell(`Pairings cannot be ended from the terminal (${error.message}).`);
      resolve();
    });
    desk.listen(path, () => resolve());
  });
  await chmod(path, OWNER_ONLY).catch(() => {});
  return () => {
    desk.close();
    for (const socket of open) socket.destroy();
  };
}

function inLine(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}

/**
 * Asks the running server of this shop.
 * @throws DeskError when none answers
 */
export function askDesk(shop: string, asked: DeskRequest): Promise<DeskAnswer> {
  return new Promise((resolve, reject) => {
    const fail = () =>
      reject(
        new DeskError(`No server answers for the shop ${shop}; give the folder that it serves with --shop.`),
      );
    const socket = connect(pathFor(shop), () => socket.write(`${JSON.stringify(asked)}\n`));
    socket.setTimeout(PATIENCE_MS, () => socket.destroy());
    socket.on('error', fail);
    socket.on('close', fail);
    createInterface({ input: socket })
      .on('error', fail)
      .once('line', line => {
        const found = answerSchema.safeParse(inLine(line));
        if (found.success) resolve(found.data);
        // Whoever else sits at that address is no server of this shop: the end of the line says so.
        socket.destroy();
      });
  });
}
