import { createPieceCutter } from '../formats/pieces.ts';
import {
  parseSlcan,
  SLCAN_ASK_STATUS,
  SLCAN_BELL,
  SLCAN_CLOSE,
  type SlcanBitRate,
  slcanListen,
} from '../formats/slcan.ts';
import type { BusEnd, BusSource, OnFrame, OnNotice } from '../ports.ts';
import { causeOf, conditionNotice, createRubbishCounter } from './notices.ts';

/** A serial line, opened. */
export interface SerialLine {
  /** Ends, or rejects, when the adapter is unplugged. */
  readonly chunks: AsyncIterable<Uint8Array>;
  write(text: string): Promise<void>;
  close(): Promise<void>;
}

interface SlcanOptions {
  /** Where it is, for the user: a device path, "the USB adapter". */
  readonly place: string;
  readonly open: () => Promise<SerialLine>;
  readonly bitRate: SlcanBitRate;
  /** Time for the frames, seconds. */
  readonly nowS: () => number;
  /** Calls again and again until the function it gives back is called. */
  readonly repeat: (everyMs: number, action: () => void) => () => void;
}

const STATUS_EVERY_MS = 1000;

/** A serial adapter with the SLCAN text protocol, opened to listen only. Runs in a browser too. */
export function slcanAdapter({ place, open, bitRate, nowS, repeat }: SlcanOptions): BusSource {
  let closed = false;
  let line: SerialLine | undefined;
  const lost = (what: string, advice: string): BusEnd => ({
    kind: 'lost',
    reason: `The bus adapter at ${place} ${what}; ${advice}.`,
  });

  async function listen(it: SerialLine, onFrame: OnFrame, onNotice: OnNotice): Promise<BusEnd> {
    const hear = createHearing(onFrame, onNotice, nowS);
    for (const command of slcanListen(bitRate)) await it.write(command);
    for await (const chunk of it.chunks) {
      const refused = await hear(chunk);
      if (closed) break;
      if (refused)
        return lost(`refused to ${refused}`, 'use an adapter that can listen only at this bit rate');
    }
    return closed ? { kind: 'finished' } : lost('is gone', 'plug it in again');
  }

  return {
    description: `serial bus adapter at ${place}, ${bitRate / 1000} kbit/s, listening only`,
    async run(onFrame, onNotice) {
      try {
        line = await open();
      } catch (cause) {
        return lost(`could not be opened (${causeOf(cause)})`, 'check that it is plugged in and not in use');
      }
      const it = line;
      if (closed) {
        await it.close().catch(() => {});
        return { kind: 'finished' };
      }
      const stopAsking = repeat(STATUS_EVERY_MS, () => {
        // A line that is gone is told by its reader.
        it.write(SLCAN_ASK_STATUS).catch(() => {});
      });
      try {
        return await listen(it, onFrame, onNotice);
      } catch (cause) {
        return closed ? { kind: 'finished' } : lost(`is gone (${causeOf(cause)})`, 'plug it in again');
      } finally {
        stopAsking();
        await it.close().catch(() => {});
      }
    },
    close() {
      closed = true;
      const it = line;
      it?.write(SLCAN_CLOSE)
        .catch(() => {})
        .finally(() => it.close().catch(() => {}));
    },
  };
}

/** The commands that opened the channel, in order; the first may be refused because it was closed already. */
const MAY_NOT_BE_REFUSED = [undefined, 'set the bit rate', 'listen only'];

/** Takes what the adapter says; gives the command that it refused, if it was one that matters. */
function createHearing(onFrame: OnFrame, onNotice: OnNotice, nowS: () => number) {
  const cutter = createPieceCutter('\r');
  const rubbish = createRubbishCounter('message', onNotice);
  const decoder = new TextDecoder('latin1');
  let answers = 0;
  let told = '';

  return async (chunk: Uint8Array): Promise<string | undefined> => {
    let refused: string | undefined;
    // A bell is a message of its own and has no carriage return after it.
    const text = decoder.decode(chunk).replaceAll(SLCAN_BELL, `${SLCAN_BELL}\r`);
    for (const piece of cutter.push(text)) {
      const message = parseSlcan(piece, nowS());
      if (message.kind === 'frame') {
        const taken = onFrame(message.frame);
        if (taken) await taken;
      } else if (message.kind === 'done' || message.kind === 'refused') {
        if (message.kind === 'refused') refused ??= MAY_NOT_BE_REFUSED[answers];
        answers += 1;
      } else if (message.kind === 'status') {
        // Asked every second, so each condition is told when it changes.
        const now = message.conditions.join();
        if (now !== told) for (const condition of message.conditions) onNotice(conditionNotice(condition));
        if (now === '' && told !== '') onNotice(conditionNotice('errorActive'));
        told = now;
      } else if (message.kind === 'rubbish') rubbish(message.reason, piece);
    }
    return refused;
  };
}
