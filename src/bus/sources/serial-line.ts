import { close, constants, createReadStream, open, write } from 'node:fs';
import { stat } from 'node:fs/promises';
import { ReadStream } from 'node:tty';
import { promisify } from 'node:util';
import type { SerialLine } from './slcan.ts';

const openFd = promisify(open);
const writeFd = promisify(write);
const closeFd = promisify(close);

/**
 * Opens a serial device in raw mode. USB adapters take any speed; set another kind's speed with `stty` before.
 * A file or pipe is read as a recording, and commands to it go nowhere.
 */
export async function openSerialLine(path: string): Promise<SerialLine> {
  if (!(await stat(path)).isCharacterDevice()) return recordedLine(path);
  const fd = await openFd(path, constants.O_RDWR | constants.O_NOCTTY | constants.O_NONBLOCK);
  let stream: ReadStream;
  try {
    stream = new ReadStream(fd);
  } catch (cause) {
    await closeFd(fd);
    throw cause;
  }
  stream.setRawMode(true);
  return {
    chunks: stream,
    async write(text) {
      await writeFd(fd, text);
    },
    async close() {
      stream.destroy();
    },
  };
}

function recordedLine(path: string): SerialLine {
  const stream = createReadStream(path);
  return {
    chunks: stream,
    async write() {},
    async close() {
      stream.destroy();
    },
  };
}
