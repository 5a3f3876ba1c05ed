import type { Battery } from '../../server/protocol/index.ts';

/** The Battery Status API, as far as it is used; not every browser has it. */
interface Manager extends EventTarget {
  readonly level: number;
  readonly charging: boolean;
}

/** Told again now and then: a line that was broken meanwhile has not heard it. */
const EVERY_MS = 60_000;

/** Tells what is left in the battery of this device, at once and when that changes. @returns what ends it */
export function tellBattery(tell: (battery: Battery) => void): () => void {
  const ask: unknown = Reflect.get(navigator, 'getBattery');
  if (typeof ask !== 'function') return () => {};
  let over = false;
  let timer: ReturnType<typeof setInterval> | undefined;
  let stop = () => {};
  (ask.call(navigator) as Promise<Manager>).then(
    battery => {
      if (over) return;
      const say = () => tell({ share: battery.level, charging: battery.charging });
      for (const change of ['levelchange', 'chargingchange']) battery.addEventListener(change, say);
      timer = setInterval(say, EVERY_MS);
      // The line takes a moment to be there.
      const first = setTimeout(say, 1000);
      stop = () => {
        clearTimeout(first);
        for (const change of ['levelchange', 'chargingchange']) battery.removeEventListener(change, say);
      };
    },
    () => {
      // A browser that does not say is one without a battery.
    },
  );
  return () => {
    over = true;
    clearInterval(timer);
    stop();
  };
}
