import { open, stat } from 'node:fs/promises';
import { parseCandumpLine } from '../../bus/formats/candump.ts';
import type { BusSource } from '../../bus/ports.ts';
import { candumpOn } from '../../bus/sources/candump-child.ts';
import { candumpFile } from '../../bus/sources/candump-file.ts';
import { paced } from '../../bus/sources/paced.ts';
import { reconnecting } from '../../bus/sources/reconnecting.ts';
import { openSerialLine } from '../../bus/sources/serial-line.ts';
import { slcanAdapter } from '../../bus/sources/slcan.ts';
import { systemCause } from '../../files/cause.ts';
import type { Profile } from '../../profile/schema.ts';
import type { Clock } from '../../session/clock.ts';
import { OptionError } from './options.ts';

const INTERFACE = /^[A-Za-z][A-Za-z0-9_.-]{0,14}$/;
const INTERFACES = '/sys/class/net';
const HEAD_BYTES = 16_384;
const CHOICES =
  'give a candump log file, a CAN interface such as can0, or a serial device such as /dev/ttyACM0';

const statOf = (path: string) => stat(path).catch(() => null);

/** Whether any of the first lines of a file is one that candump writes. */
async function isCandumpLog(path: string): Promise<boolean> {
  const file = await open(path);
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0);
    const lines = buffer.toString('latin1', 0, bytesRead).split('\n');
    return lines.some(line => parseCandumpLine(line.trimEnd()).kind !== 'rubbish');
  } finally {
    await file.close();
  }
}

const repeat = (everyMs: number, action: () => void) => {
  const timer = setInterval(action, everyMs);
  return () => clearInterval(timer);
};

/**
 * Opens what `--bus` names: a log of candump, played at its own pace; a CAN interface; a serial adapter. What is
 * unplugged later is tried again until it is back.
 * @throws OptionError, one sentence, when there is no such thing, it is of another kind, or the engine has no bus
 */
export async function openBus(name: string, profile: Profile, clock: Clock): Promise<BusSource> {
  const { bus } = profile;
  if (!bus)
    throw new OptionError(
      `--bus: the profile "${profile.name}" has no "bus" section; leave --bus out, or describe in the profile what the engine sends.`,
    );
  const wait = (ms: number) => clock.sleep(ms);
  const found = await statOf(name);
  if (found?.isCharacterDevice()) {
    const { bitRate } = bus;
    const nowS = () => clock.nowMs() / 1000;
    return reconnecting(
      () => slcanAdapter({ place: name, open: () => openSerialLine(name), bitRate, nowS, repeat }),
      wait,
    );
  }
  if (found?.isFile()) {
    const isLog = await isCandumpLog(name).catch((cause: unknown) => {
      throw new OptionError(
        `--bus ${name} cannot be read: ${systemCause(cause)}; check that you may read it.`,
      );
    });
    if (!isLog) throw new OptionError(`--bus ${name} is no log of candump; ${CHOICES}.`);
    return paced(candumpFile(name), clock);
  }
  if (found) throw new OptionError(`--bus ${name} is neither a log nor a device; ${CHOICES}.`);
  if (INTERFACE.test(name)) {
    if (await statOf(`${INTERFACES}/${name}`)) return reconnecting(() => candumpOn(name), wait);
    throw new OptionError(
      `--bus ${name}: there is no CAN interface and no file of this name; plug the adapter in, or ${CHOICES}.`,
    );
  }
  throw new OptionError(`--bus ${name} is not there; ${CHOICES}.`);
}
