type LampName = 'malfunction' | 'redStop' | 'amberWarning' | 'protect';
export type LampStatus = 'off' | 'on' | 'reserved' | 'notAvailable';
export type LampFlash = 'slow' | 'fast' | 'reserved' | 'none';

/** One lamp as its sender commands it. Flash has a meaning only while the lamp is on. */
export interface LampState {
  readonly status: LampStatus;
  readonly flash: LampFlash;
}

export type Lamps = Readonly<Record<LampName, LampState>>;

/** Lowest bit of each lamp in the status byte and in the flash byte, SAE J1939-73 section 5.7.1 (from memory). */
const SHIFTS: Readonly<Record<LampName, number>> = {
  malfunction: 6,
  redStop: 4,
  amberWarning: 2,
  protect: 0,
};
const STATUSES: readonly LampStatus[] = ['off', 'on', 'reserved', 'notAvailable'];
const FLASHES: readonly LampFlash[] = ['slow', 'fast', 'reserved', 'none'];

/** The four lamps of a diagnostic message, from its first two bytes; bytes that are missing count as not available. */
export function parseLamps(status = 0xff, flash = 0xff): Lamps {
  const lamp = (name: LampName): LampState => ({
    status: STATUSES[(status >>> SHIFTS[name]) & 3] ?? 'notAvailable',
    flash: FLASHES[(flash >>> SHIFTS[name]) & 3] ?? 'none',
  });
  return {
    malfunction: lamp('malfunction'),
    redStop: lamp('redStop'),
    amberWarning: lamp('amberWarning'),
    protect: lamp('protect'),
  };
}

/** The two bytes that say these lamps. */
export function formatLamps(lamps: Lamps): [status: number, flash: number] {
  let status = 0;
  let flash = 0;
  for (const name of ['malfunction', 'redStop', 'amberWarning', 'protect'] as const) {
    status |= STATUSES.indexOf(lamps[name].status) << SHIFTS[name];
    flash |= FLASHES.indexOf(lamps[name].flash) << SHIFTS[name];
  }
  return [status, flash];
}
