import type { SerialLine } from './slcan.ts';

/** The part of the browser's Web Serial port that is used here. */
export interface WebSerialPort {
  readonly readable: ReadableStream<Uint8Array> | null;
  readonly writable: WritableStream<Uint8Array> | null;
  open(options: { readonly baudRate: number }): Promise<void>;
  close(): Promise<void>;
}

/** Opens a port that the user has chosen in the browser. USB adapters take any speed. */
export async function openWebSerialLine(port: WebSerialPort, baudRate = 115_200): Promise<SerialLine> {
  await port.open({ baudRate });
  const { readable, writable } = port;
  if (!readable || !writable) throw new Error('the port gives no streams');
  const reader = readable.getReader();
  const writer = writable.getWriter();
  const encoder = new TextEncoder();
  async function* chunks(): AsyncGenerator<Uint8Array> {
    for (let part = await reader.read(); !part.done; part = await reader.read()) yield part.value;
  }
  return {
    chunks: chunks(),
    write: text => writer.write(encoder.encode(text)),
    async close() {
      await reader.cancel();
      reader.releaseLock();
      await writer.close();
      await port.close();
    },
  };
}
