import { resolve } from 'node:path';
import type { Command } from 'commander';
import { askDesk, type PairedDevice } from '../server/index.ts';
import { OptionError } from './run/options.ts';

interface DevicesOptions {
  readonly shop: string;
  readonly end?: string;
}

/** Digits of an id that are shown: enough to tell the devices of a shop apart. */
const SHOWN_DIGITS = 8;

/** Adds `devices`: which devices are paired with the server that runs, and the end of a pairing. */
export function registerDevices(program: Command): void {
  program
    .command('devices')
    .description('list the devices that are paired with the running server, or end the pairing of one')
    .option('--shop <folder>', 'the folder that the server serves', 'first-fire-shop')
    .option('--end <id>', 'end the pairing of the device whose id begins so')
    .action(async ({ shop, end }: DevicesOptions) => {
      for (const line of await devicesOf(resolve(shop), end)) console.log(line);
    });
}

async function devicesOf(shop: string, end: string | undefined): Promise<readonly string[]> {
  const asked = end === undefined ? ({ do: 'list' } as const) : ({ do: 'end', device: end } as const);
  const { devices, sentence } = await askDesk(shop, asked);
  if (sentence !== null) throw new OptionError(sentence);
  if (end !== undefined)
    return devices.map(({ name, bay }) => `The pairing of ${JSON.stringify(name)} in ${bay} is ended.`);
  return devices.length === 0 ? ['No device is paired.'] : devices.map(rowOf);
}

const rowOf = ({ id, bay, role, name, connected }: PairedDevice) =>
  `${id.slice(0, SHOWN_DIGITS)}  ${bay.padEnd(20)} ${role.padEnd(12)} ${(connected ? 'connected' : 'not connected').padEnd(13)} ${JSON.stringify(name)}`;
