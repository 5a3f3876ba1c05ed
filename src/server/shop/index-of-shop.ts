import { ArchiveError } from '../../archive/archive-error.ts';
import type { Profile } from '../../profile/schema.ts';
import type { PastStarts } from '../../session/past-starts/beside-others.ts';
import { ArchivedShop } from './archived-shop.ts';
import { FolderShop } from './folder-shop.ts';
import type { ListedRow } from './row.ts';

/** Where a shop has its records. */
export interface ShopPlaces {
  /** The folder of its records. */
  readonly folder: string;
  /** Its archive: a file, or a data base. */
  readonly archive: string;
  /** A folder of the server's own, for records that only the archive has. */
  readonly unpacked: string;
}

export interface Listing {
  readonly rows: readonly ListedRow[];
  /** What the terminal should know of it. */
  readonly told: readonly string[];
}

/** Open for as long as this program lives: what the archive has taken in is not read again. */
let open: { readonly places: string; readonly shop: ArchivedShop; told: string[] } | null = null;

async function shopAt(places: ShopPlaces) {
  const named = JSON.stringify(places);
  if (open?.places === named) return open;
  await open?.shop.close();
  const folder = await FolderShop.open(places.folder);
  const told: string[] = [];
  open = {
    places: named,
    told,
    shop: new ArchivedShop(folder, places.archive, places.unpacked, sentence => told.push(sentence)),
  };
  return open;
}

/** The sessions in which this text stands, the newest first; all, where it is empty. */
export async function listShop(places: ShopPlaces, find: string): Promise<Listing> {
  const { shop, told } = await shopAt(places);
  const rows = await shop.list(find);
  return { rows, told: told.splice(0) };
}

/** Takes what is new in the folder into the archive. */
export async function takeInShop(places: ShopPlaces): Promise<Pick<Listing, 'told'>> {
  const { shop, told } = await shopAt(places);
  try {
    await shop.takeIn();
  } catch (error) {
    if (!(error instanceof ArchiveError)) throw error;
    told.push(error.message);
  }
  return { told: told.splice(0) };
}

/** What the earlier starts of this engine measured; nothing, where the archive cannot be used, which lists tell. */
export async function pastStartsInShop(places: ShopPlaces, profile: Profile): Promise<PastStarts> {
  const { shop } = await shopAt(places);
  return shop.pastStarts(profile);
}

/** The file of a session that only the archive has, unpacked; null when it has none of this id. */
export async function unpackSession(places: ShopPlaces, id: string): Promise<string | null> {
  const { shop } = await shopAt(places);
  return shop.unpack(id);
}
