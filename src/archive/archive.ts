import { z } from 'zod';
import { ArchiveError } from './archive-error.ts';
import { conditionOf, type Filter } from './filter.ts';
import { fold } from './fold.ts';
import type { Intake } from './intake.ts';
import type { MeasureName } from './measures.ts';
import { unpack } from './packed-log.ts';
import {
  type ArchivedSession,
  definitions,
  SCHEMA_VERSION,
  searchColumns,
  sessionColumns,
  sessionSchema,
} from './schema.ts';
import { insertAll, type Store } from './store.ts';
import { type Decision, decide, type Version } from './versions.ts';

export interface Found {
  readonly sessions: readonly ArchivedSession[];
  /** There are more than were asked for. */
  readonly more: boolean;
}

/** One measured value with the session it belongs to. */
export interface MeasuredStart {
  readonly session: ArchivedSession;
  readonly at: string;
  readonly nth: number;
  readonly value: number;
}

const versionSchema = sessionSchema.pick({ id: true, state: true, chain: true, head: true, entries: true });
const packedSchema = z.object({ packed: z.instanceof(Uint8Array) });
const figureSchema = z.object({ measure: z.string(), nth: z.int(), at: z.string(), value: z.number() });
const startSchema = sessionSchema.extend(figureSchema.omit({ measure: true }).shape);

export type Figure = z.infer<typeof figureSchema>;

const selected = sessionColumns.map(column => `s.${column}`).join(', ');

/** All sessions of a shop, in a store. */
export class Archive {
  readonly #store: Store;

  private constructor(store: Store) {
    this.#store = store;
  }

  /** @throws ArchiveError when the store holds something else, or an archive of a later version */
  static async in(store: Store): Promise<Archive> {
    await store.alone(async () => {
      for (const definition of definitions) await store.all(definition);
      const [row] = await store.all('SELECT version FROM first_fire_archive');
      if (!row) await insertAll(store, 'first_fire_archive', ['version'], [[SCHEMA_VERSION]]);
      else if (row.version !== SCHEMA_VERSION)
        throw new ArchiveError(
          `${store.name} was made by another version of this program (${String(row.version)}, not ${SCHEMA_VERSION}); use that one.`,
        );
    });
    return new Archive(store);
  }

  get name(): string {
    return this.#store.name;
  }

  /**
   * Adds records as one transaction; on failure none of them is in the archive. What is there already is
   * left alone, a longer version takes the place of a shorter one, a record that does not verify is kept.
   * @returns one decision for each, in order
   */
  async add(intakes: readonly Intake[], now: Date): Promise<readonly Decision[]> {
    return this.#store.alone(async () => {
      const held = await this.#versionsLike(intakes);
      const fresh = new Map<string, { readonly intake: Intake; readonly remark: string }>();
      const replaced = new Set<string>();
      const decisions: Decision[] = [];
      for (const intake of intakes) {
        const kin = held.filter(
          ({ id, chain }) => id === intake.digest || (chain !== '' && chain === intake.chain),
        );
        const decision = await decide(
          intake,
          kin,
          async id => fresh.get(id)?.intake.packed ?? this.packedLog(id),
        );
        decisions.push(decision);
        if (decision.kind === 'known') continue;
        for (const id of decision.kind === 'longer' ? decision.instead : []) {
          held.splice(
            held.findIndex(version => version.id === id),
            1,
          );
          if (!fresh.delete(id)) replaced.add(id);
        }
        const { state, chain, head, entries } = intake;
        held.push({ id: decision.id, state, chain, head, entries });
        fresh.set(decision.id, { intake, remark: decision.remark });
      }
      await this.#remove([...replaced]);
      await this.#insert(fresh, now);
      return decisions;
    });
  }

  /** The latest sessions first. */
  async find(filter: Filter, limit: number): Promise<Found> {
    const { sql, values } = conditionOf(filter);
    const rows = await this.#store.all(
      `SELECT ${selected} FROM
       (SELECT k.id FROM first_fire_search k WHERE ${sql} ORDER BY k.started DESC, k.id LIMIT ?) f
       JOIN first_fire_sessions s ON s.id = f.id ORDER BY s.started DESC, s.id`,
      [...values, limit + 1],
    );
    const sessions = rows.slice(0, limit).map(row => sessionSchema.parse(row));
    return { sessions, more: rows.length > limit };
  }

  /**
   * The last values of one measure, oldest first; sessions whose record was altered are left out, for their
   * values cannot be believed.
   */
  async measured(measure: MeasureName, filter: Filter, last: number): Promise<readonly MeasuredStart[]> {
    const { sql, values } = conditionOf(filter);
    const rows = await this.#store.all(
      `SELECT ${selected}, m.at, m.nth, m.value FROM first_fire_measures m
       JOIN first_fire_search k ON k.id = m.id JOIN first_fire_sessions s ON s.id = m.id
       WHERE m.measure = ? AND s.state <> 'broken' AND ${sql} ORDER BY m.at DESC, m.nth DESC LIMIT ?`,
      [measure, ...values, last],
    );
    return rows
      .map(row => {
        const { at, nth, value, ...session } = startSchema.parse(row);
        return { session, at, nth, value };
      })
      .reverse();
  }

  /** @throws ArchiveError when no session, or more than one, has an id that begins so */
  async session(idStart: string): Promise<ArchivedSession> {
    const start = idStart.trim().toLowerCase();
    if (!/^[0-9a-f]{4,64}$/.test(start))
      throw new ArchiveError(`"${idStart}" is no id: give at least four of its digits (0 to 9, a to f).`);
    const rows = await this.#store.all(
      `SELECT ${selected} FROM first_fire_sessions s WHERE s.id LIKE ? ORDER BY s.id LIMIT 2`,
      [`${start}%`],
    );
    const [row, another] = rows;
    if (!row) throw new ArchiveError(`No session in ${this.name} has an id that begins with ${start}.`);
    if (another) throw new ArchiveError(`More than one id begins with ${start}; give more digits.`);
    return sessionSchema.parse(row);
  }

  /** Everything that a session measured. */
  async figures(id: string): Promise<readonly Figure[]> {
    const rows = await this.#store.all(
      'SELECT measure, nth, at, value FROM first_fire_measures WHERE id = ? ORDER BY at, measure, nth',
      [id],
    );
    return rows.map(row => figureSchema.parse(row));
  }

  /** The record's file, to the byte. */
  async log(id: string): Promise<Buffer> {
    return unpack(await this.packedLog(id));
  }

  async packedLog(id: string): Promise<Uint8Array> {
    const [row] = await this.#store.all('SELECT packed FROM first_fire_logs WHERE id = ?', [id]);
    if (!row) throw new ArchiveError(`${this.name} holds no record for ${id}; the archive was damaged.`);
    return packedSchema.parse(row).packed;
  }

  async counts(): Promise<{ readonly sessions: number; readonly unverified: number }> {
    const rows = await this.#store.all(
      `SELECT state, COUNT(*) AS number FROM first_fire_sessions GROUP BY state`,
    );
    const number = (own: readonly (typeof rows)[number][]) =>
      own.reduce((sum, row) => sum + z.coerce.number().parse(row.number), 0);
    return { sessions: number(rows), unverified: number(rows.filter(({ state }) => state !== 'sound')) };
  }

  close(): Promise<void> {
    return this.#store.close();
  }

  async #versionsLike(intakes: readonly Intake[]): Promise<Version[]> {
    const chains = [
      ...new Set(intakes.flatMap(({ chain, digest }) => (chain === '' ? [digest] : [chain, digest]))),
    ];
    const marks = chains.map(() => '?').join(', ');
    if (chains.length === 0) return [];
    const rows = await this.#store.all(
      `SELECT id, state, chain, head, entries FROM first_fire_sessions WHERE chain IN (${marks}) OR id IN (${marks})`,
      [...chains, ...chains],
    );
    return rows.map(row => versionSchema.parse(row));
  }

  async #remove(ids: readonly string[]): Promise<void> {
    if (ids.length === 0) return;
    const marks = ids.map(() => '?').join(', ');
    await this.#store.all(`DELETE FROM first_fire_sessions WHERE id IN (${marks})`, ids);
  }

  async #insert(fresh: ReadonlyMap<string, { intake: Intake; remark: string }>, now: Date): Promise<void> {
    const rows = [...fresh].map(([id, { intake, remark }]) => ({
      session: sessionOf(id, intake, remark, now),
      intake,
    }));
    await insertAll(
      this.#store,
      'first_fire_sessions',
      sessionColumns,
      rows.map(({ session }) => sessionColumns.map(column => session[column])),
    );
    await insertAll(
      this.#store,
      'first_fire_search',
      searchColumns,
      rows.map(({ session, intake }) => searched(session, intake)),
    );
    await insertAll(
      this.#store,
      'first_fire_logs',
      ['id', 'packed'],
      rows.map(({ session, intake }) => [session.id, intake.packed]),
    );
    await insertAll(
      this.#store,
      'first_fire_measures',
      ['id', 'measure', 'nth', 'at', 'value'],
      rows.flatMap(({ session, intake }) =>
        intake.card.measured.map(({ measure, nth, at, value }) => [session.id, measure, nth, at, value]),
      ),
    );
  }
}

const sessionOf = (id: string, intake: Intake, remark: string, now: Date): ArchivedSession =>
  sessionSchema.parse({ ...intake.card, ...intake, id, remark, added: now.toISOString() });

/** In the order of `searchColumns`. */
function searched(session: ArchivedSession, { card, fault }: Intake): readonly string[] {
  const { id, started, outcome, state, vehicle, engine, profile } = session;
  const people = [session.technician, session.second, session.supervisor];
  return [
    id,
    started,
    outcome,
    state,
    fold(vehicle),
    fold(people.join('\n')),
    fold(`${engine}\n${profile}`),
    fold([vehicle, engine, profile, ...people, outcome, card.story, fault].join('\n')),
  ];
}
