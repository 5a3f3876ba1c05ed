import { stat } from 'node:fs/promises';
import type { Profile } from '../../profile/schema.ts';
import { readLog } from '../../record/index.ts';
import { ENTRIES_IN_A_PAGE } from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import {
  listShop,
  pastStartsInShop,
  type ShopPlaces,
  takeInShop,
  unpackSession,
} from '../shop/index-of-shop.ts';
import { checkRecord, firstHash } from './check-record.ts';
import { reportPage } from './report-page.ts';

/** The longest session that people have held is a tenth of this; what is longer is read on the laptop itself. */
const MOST_BYTES = 64 * 1024 * 1024;

async function refuseTooLong(path: string): Promise<void> {
  if ((await stat(path)).size > MOST_BYTES)
    throw new Refused('tooLong', 'The record is too long to be shown here; read it on the laptop itself.');
}

/** What is too heavy for the program that serves the faces. Each takes and gives plain data. */
export const jobs = {
  /** The report as an HTML page, in UTF-8. */
  async report({ path }: { readonly path: string }): Promise<Uint8Array> {
    await refuseTooLong(path);
    return new TextEncoder().encode(await reportPage(path));
  },

  /** Some entries of a record, from this one on. */
  async entries({ path, from }: { readonly path: string; readonly from: number }) {
    await refuseTooLong(path);
    const { entries } = await readLog(path);
    return entries
      .slice(from, from + ENTRIES_IN_A_PAGE)
      .map(({ seq, at, monoMs, kind, data, hash }) => ({ seq, at, monoMs, kind, data, hash }));
  },

  /** Whether a record can be believed; never refuses. */
  check: checkRecord,

  /** The hash of the first entry of each of these, by which versions of one record are known. */
  async chains({ paths }: { readonly paths: readonly string[] }): Promise<readonly string[]> {
    const found: string[] = [];
    for (const path of paths) found.push(await firstHash(path));
    return found;
  },

  /** The sessions of the shop; what is new in its folder is taken into its archive before. */
  list: ({ places, find }: { readonly places: ShopPlaces; readonly find: string }) => listShop(places, find),

  /** Takes what is new in the shop's folder into its archive. */
  takeIn: ({ places }: { readonly places: ShopPlaces }) => takeInShop(places),

  /** What the earlier starts of an engine measured, by figure. */
  pastStarts: ({ places, profile }: { readonly places: ShopPlaces; readonly profile: Profile }) =>
    pastStartsInShop(places, profile),

  /** The file of a session that only the archive has, or null. */
  unpack: ({ places, id }: { readonly places: ShopPlaces; readonly id: string }) => unpackSession(places, id),
};

export type Jobs = typeof jobs;
export type JobName = keyof Jobs;
