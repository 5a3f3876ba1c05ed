import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { uploadAnswerSchema } from '../../src/server/protocol/index.ts';
import { honestSession } from '../../tests/record/honest/session.ts';
import type { Chance } from './chance.ts';
import type { Crew } from './people.ts';
import type { ShopCalls } from './shop-calls.ts';

/** A record that a tablet finished by itself, with the session's real parts. */
export interface Local {
  readonly bytes: Buffer;
  readonly sha256: string;
  readonly bay: string;
  /** By which the laptop said that it keeps it. */
  keptAs: string | null;
  sent: number;
  /** What came of it besides, by how often: a status and its sentence, or why nothing came back. */
  readonly refusals: Map<string, number>;
}

export const sha256Of = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

const RECORDS = 6;
const REST_WITHIN_MS = 180_000;

/** Holds some sessions as tablets do that are out of reach, before anything else begins. */
export async function heldLocally(scratch: string, bays: readonly string[], seed: number): Promise<Local[]> {
  const locals: Local[] = [];
  // Two that begin alike at the same moment of the clock they share would be versions of one record, of one bay.
  const beginnings = new Set<string>();
  for (let nth = 0; locals.length < RECORDS; nth += 1) {
    const { path } = await honestSession(join(scratch, `local-${nth}.jsonl`), seed + nth);
    const bytes = await readFile(path);
    const beginning = sha256Of(bytes.subarray(0, bytes.indexOf('\n')));
    if (beginnings.has(beginning)) continue;
    beginnings.add(beginning);
    const bay = bays[locals.length % bays.length] ?? '';
    locals.push({ bytes, sha256: sha256Of(bytes), bay, keptAs: null, sent: 0, refusals: new Map() });
  }
  return locals;
}

/** Sends one of them in, maybe once more than it takes. */
export async function sendIn(
  locals: readonly Local[],
  crews: readonly Crew[],
  chance: Chance,
  calls: ShopCalls,
  blame: (sentence: string) => void,
): Promise<void> {
  await send(chance.one(locals), crews, calls, blame);
}

/** A page does so when the laptop can be reached again: all that was sent and not acknowledged, until it is. */
export async function sendTheRest(
  locals: readonly Local[],
  crews: readonly Crew[],
  calls: ShopCalls,
  blame: (sentence: string) => void,
): Promise<void> {
  const untilMs = performance.now() + REST_WITHIN_MS;
  for (const local of locals.filter(({ sent }) => sent > 0)) {
    while (local.keptAs === null && performance.now() < untilMs) {
      await send(local, crews, calls, blame);
      if (local.keptAs === null) await wait(1000);
    }
    if (local.keptAs === null)
      blame(
        `A record could not be sent in, though the server was up: ${[...local.refusals.keys()].join('; ')}`,
      );
  }
}

async function send(
  local: Local,
  crews: readonly Crew[],
  calls: ShopCalls,
  blame: (sentence: string) => void,
): Promise<void> {
  const crew = crews.find(({ bay }) => bay === local.bay);
  if (!crew) return;
  local.sent += 1;
  const { token, address } = crew.technician.who;
  const answer = await calls.upload(local.bytes, token, address);
  if (typeof answer === 'string' || answer.status !== 200) {
    const why = typeof answer === 'string' ? answer : `${answer.status} ${answer.body}`;
    local.refusals.set(why, (local.refusals.get(why) ?? 0) + 1);
    return;
  }
  const { id, confirmed } = uploadAnswerSchema.parse(JSON.parse(answer.body));
  if (!confirmed) blame(`An honest record that was sent in was not confirmed: ${answer.body}`);
  if (local.keptAs !== null && local.keptAs !== id)
    blame(`One record was kept twice: ${local.keptAs}, ${id}.`);
  local.keptAs = id;
}
