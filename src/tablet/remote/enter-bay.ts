import type { PairAnswer } from '../../server/protocol/index.ts';
import { devicesFor } from '../devices.ts';
import { loadSettings, type Settings } from '../settings.ts';
import { type BaySession, joinBay } from './bay-session.ts';
import { keepJoined, loadJoined } from './pairing.ts';

/** Joins the bay of this pairing, until it is left: also when the page is loaded anew. */
export function enterBay(pairing: PairAnswer, settings: Settings, dataBase: IDBDatabase): BaySession {
  const session = joinBay(pairing, devicesFor(settings), { units: settings.units, dataBase });
  keepJoined(true);
  return session;
}

/** Joins the bay that nobody has left on this device; null when there is none. */
export function comeBack(dataBase: IDBDatabase): BaySession | null {
  const before = loadJoined();
  return before && enterBay(before, loadSettings(), dataBase);
}
