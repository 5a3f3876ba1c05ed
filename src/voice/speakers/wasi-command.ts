import { MemoryFile } from './memory-file.ts';

/** What a finished command left behind. */
export interface CommandResult {
  readonly exitCode: number;
  /** The file it wrote, whatever its name. */
  readonly output: Uint8Array;
  readonly messages: string;
}

class Exit extends Error {
  readonly exitCode: number;
  constructor(exitCode: number) {
    super(`exit ${exitCode}`);
    this.exitCode = exitCode;
  }
}

const SUCCESS = 0;
const BAD_DESCRIPTOR = 8;
const ROOT = 3;
const OUTPUT = 4;
const DIRECTORY = 3;
const REGULAR_FILE = 4;
const ALL_RIGHTS = 0xffff_ffff_ffff_ffffn;

/**
 * Runs a WASI (preview 1) command once, in memory: it gets arguments, sees an empty folder `/`, and may write
 * one file there. No Node import, so that a browser page can use it too; `node:wasi` would need a real folder.
 * Only what a command without input files calls is offered; a module that needs more fails to instantiate.
 */
export function runWasiCommand(module: WebAssembly.Module, args: readonly string[]): CommandResult {
  const output = new MemoryFile();
  const messages = new MemoryFile();
  const argBytes = args.map(arg => new TextEncoder().encode(`${arg}\0`));
  let memory = new WebAssembly.Memory({ initial: 0 });
  const view = () => new DataView(memory.buffer);
  const fileOf = (fd: number) => (fd === OUTPUT ? output : fd === 1 || fd === 2 ? messages : undefined);

  const wasi = {
    args_sizes_get(countAt: number, bytesAt: number) {
      view().setUint32(countAt, argBytes.length, true);
      view().setUint32(
        bytesAt,
        argBytes.reduce((sum, { length }) => sum + length, 0),
        true,
      );
      return SUCCESS;
    },
    args_get(listAt: number, textAt: number) {
      let at = textAt;
      for (const [i, bytes] of argBytes.entries()) {
        view().setUint32(listAt + 4 * i, at, true);
        new Uint8Array(memory.buffer).set(bytes, at);
        at += bytes.length;
      }
      return SUCCESS;
    },
    // Always the same moment: the same sentence gives the same sound.
    clock_time_get(_id: number, _precision: bigint, at: number) {
      view().setBigUint64(at, 0n, true);
      return SUCCESS;
    },
    fd_close: () => SUCCESS,
    fd_fdstat_get(fd: number, at: number) {
      view().setUint8(at, fd === ROOT ? DIRECTORY : REGULAR_FILE);
      view().setUint16(at + 2, 0, true);
      view().setBigUint64(at + 8, ALL_RIGHTS, true);
      view().setBigUint64(at + 16, ALL_RIGHTS, true);
      return SUCCESS;
    },
    fd_fdstat_set_flags: () => SUCCESS,
    fd_prestat_get(fd: number, at: number) {
      if (fd !== ROOT) return BAD_DESCRIPTOR;
      view().setUint32(at, 0, true);
      view().setUint32(at + 4, 1, true);
      return SUCCESS;
    },
    fd_prestat_dir_name(_fd: number, at: number) {
      view().setUint8(at, '/'.charCodeAt(0));
      return SUCCESS;
    },
    fd_read(_fd: number, _parts: number, _count: number, readAt: number) {
      view().setUint32(readAt, 0, true);
      return SUCCESS;
    },
    fd_seek(fd: number, offset: bigint, whence: number, positionAt: number) {
      const file = fileOf(fd);
      if (!file) return BAD_DESCRIPTOR;
      view().setBigUint64(positionAt, BigInt(file.seek(Number(offset), whence)), true);
      return SUCCESS;
    },
    fd_write(fd: number, parts: number, count: number, writtenAt: number) {
      const file = fileOf(fd);
      if (!file) return BAD_DESCRIPTOR;
      let written = 0;
      for (let i = 0; i < count; i++) {
        const at = view().getUint32(parts + 8 * i, true);
        const length = view().getUint32(parts + 8 * i + 4, true);
        file.write(new Uint8Array(memory.buffer, at, length));
        written += length;
      }
      view().setUint32(writtenAt, written, true);
      return SUCCESS;
    },
    path_open(...parameters: unknown[]) {
      view().setUint32(Number(parameters.at(-1)), OUTPUT, true);
      return SUCCESS;
    },
    proc_exit(exitCode: number) {
      throw new Exit(exitCode);
    },
  };

  const { exports } = new WebAssembly.Instance(module, { wasi_snapshot_preview1: wasi });
  if (!(exports.memory instanceof WebAssembly.Memory) || typeof exports._start !== 'function') {
    throw new TypeError('not a WASI command: it exports no memory or no _start');
  }
  memory = exports.memory;
  let exitCode = 0;
  try {
    exports._start();
  } catch (cause) {
    if (!(cause instanceof Exit)) throw cause;
    exitCode = cause.exitCode;
  }
  return { exitCode, output: output.bytes(), messages: new TextDecoder().decode(messages.bytes()) };
}
