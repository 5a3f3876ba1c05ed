import type { Page } from 'playwright-core';

/** Something on the screen that changed: what was heard, or what is asked. */
export interface Shown {
  /** On the clock of the sound. */
  readonly atS: number;
  readonly what: 'heard' | 'asked';
}

/** What the tap has seen of the reply that was just given. */
export interface TapReading {
  /** When the last sound above the silence came in by the microphone, on the clock of the sound; null: none. */
  readonly lastLoudS: number | null;
  readonly shown: readonly Shown[];
}

/** Taken for the end of speech: 40 dB below the loudest so far. */
const QUIET_SHARE = 0.01;

/** Runs in the page before anything of it: listens beside it to the same microphone, and watches its screen. */
function install(quietShare: number): void {
  const tap: { lastLoudS: number | null; shown: { atS: number; what: 'heard' | 'asked' }[] } = {
    lastLoudS: null,
    shown: [],
  };
  Reflect.set(globalThis, 'earTap', tap);
  // The clock of the page is moved on by whoever measures; that of the sound is real.
  const context = new AudioContext();
  const processor = `registerProcessor('tap', class extends AudioWorkletProcessor {
    loudest = 0.01;
    process([input]) {
      const block = input?.[0] ?? [];
      let peak = 0;
      for (const sample of block) peak = Math.max(peak, Math.abs(sample));
      this.loudest = Math.max(this.loudest, peak);
      if (peak > this.loudest * ${quietShare}) this.port.postMessage(currentTime + block.length / sampleRate);
      return true;
    }
  });`;
  const devices = navigator.mediaDevices;
  const open = devices.getUserMedia.bind(devices);
  devices.getUserMedia = async wish => {
    const stream = await open(wish);
    await context.audioWorklet.addModule(
      URL.createObjectURL(new Blob([processor], { type: 'text/javascript' })),
    );
    const node = new AudioWorkletNode(context, 'tap', { numberOfOutputs: 0 });
    node.port.onmessage = ({ data }: MessageEvent<number>) => {
      tap.lastLoudS = data;
    };
    context.createMediaStreamSource(stream).connect(node);
    return stream;
  };
  document.addEventListener('DOMContentLoaded', () => {
    const look = { heard: '', asked: '' };
    new MutationObserver(() => {
      const now = {
        heard: document.querySelector('.heard')?.textContent ?? '',
        asked: document.querySelector<HTMLElement>('[data-key]')?.dataset.key ?? '',
      };
      for (const what of ['heard', 'asked'] as const) {
        if (now[what] !== look[what]) tap.shown.push({ atS: context.currentTime, what });
        look[what] = now[what];
      }
    }).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
  });
}

/** Puts the tap into every document of this page from now on. */
export const installTap = (page: Page): Promise<unknown> => page.addInitScript(install, QUIET_SHARE);

/** Forgets what was before the reply that comes now. */
export const resetTap = (page: Page): Promise<void> =>
  page.evaluate(() => {
    Object.assign(Reflect.get(globalThis, 'earTap'), { lastLoudS: null, shown: [] });
  });

export const readTap = (page: Page): Promise<TapReading> =>
  page.evaluate(() => Reflect.get(globalThis, 'earTap'));
