import { createInterface } from 'node:readline';
import type { PairedDevice, RunningServer } from '../../server/index.ts';

const HELP = 'Type "devices" to list the paired devices, "end" and a number to end the pairing of one.';

/** The part of a server that whoever sits at its terminal may ask something of. */
export type ServerDesk = Pick<RunningServer, 'devices' | 'letGo'>;

const line = ({ bay, role, name, connected }: PairedDevice, index: number) =>
  `  ${String(index + 1).padStart(2)}  ${bay.padEnd(30)} ${role.padEnd(12)} ${connected ? 'connected    ' : 'not connected'} ${JSON.stringify(name)}`;

/** Answers what is typed in the server's terminal: which devices are paired, and to end the pairing of one. */
export class TerminalDesk {
  readonly #server: ServerDesk;
  /** As it was listed last: numbers mean the devices that were seen beside them. */
  #listed: readonly PairedDevice[] = [];

  constructor(server: ServerDesk) {
    this.#server = server;
  }

  /** What is answered to one line; empty for an empty one. */
  async answer(typed: string): Promise<string> {
    const [word = '', ...rest] = typed.trim().toLowerCase().split(/\s+/);
    if (word === '') return '';
    if (word === 'devices') return this.#list();
    if (word === 'end') return this.#end(rest.join(' '));
    return `"${typed.trim()}" is not understood. ${HELP}`;
  }

  #list(): string {
    this.#listed = this.#server.devices();
    return this.#listed.length === 0
      ? 'No device is paired.'
      : ['Paired devices:', ...this.#listed.map(line)].join('\n');
  }

  async #end(number: string): Promise<string> {
    const device = /^\d{1,4}$/.test(number) ? this.#listed[Number(number) - 1] : undefined;
    if (!device)
      return `There is no device ${number || 'without a number'} in the list; type "devices" first.`;
    const ended = await this.#server.letGo(device.id);
    return ended
      ? `The pairing of ${JSON.stringify(device.name)} in ${device.bay} is ended; it can do nothing more.`
      : `${JSON.stringify(device.name)} was not paired any more.`;
  }
}

/**
 * Lets the desk answer what is typed; gives back what ends that. Where the terminal is not to be had, as in the
 * background, nothing is typed: a server must never be halted for wanting to read.
 */
export function attendDesk(
  server: ServerDesk,
  input: NodeJS.ReadStream,
  tell: (text: string) => void,
): () => void {
  const desk = new TerminalDesk(server);
  const stay = () => {};
  process.on('SIGTTIN', stay);
  input.on('error', stay);
  const lines = createInterface({ input, terminal: false });
  lines.on('line', typed => void desk.answer(typed).then(text => text !== '' && tell(text)));
  tell(HELP);
  return () => {
    lines.close();
    process.off('SIGTTIN', stay);
  };
}
