import { setTimeout as wait } from 'node:timers/promises';
import { pairAnswerSchema, type Role } from '../../src/server/protocol/index.ts';
import { Device, type Who } from './device.ts';
import type { Ledger } from './ledger.ts';
import type { Crew } from './people.ts';
import type { ServerProcess } from './server.ts';
import type { ShopCalls } from './shop-calls.ts';
import type { Ended } from './strangers.ts';

/** Pairs everybody by the codes that the terminal shows, and in each bay one more who is let go of again. */
export async function pairAll(
  server: ServerProcess,
  ledger: Ledger,
  calls: ShopCalls,
  names: readonly string[],
): Promise<{ readonly crews: Crew[]; readonly ended: Ended[] }> {
  let devices = 0;
  const pair = async (bay: string, role: Role, name: string): Promise<Who> => {
    devices += 1;
    const address = `127.0.1.${devices}`;
    const before = server.codeOf(bay, role);
    const answer = await calls.pair(before, name, address);
    if (answer?.status !== 200) throw new Error(`${name} could not be paired in ${bay}: ${answer?.body}`);
    // The terminal shows the next code.
    while (server.codeOf(bay, role) === before) await wait(20);
    return { name, role, bay, token: pairAnswerSchema.parse(JSON.parse(answer.body)).token, address };
  };
  const connected = async (bay: string, role: Role, name: string): Promise<Device> => {
    const device = new Device(await pair(bay, role, name), server, ledger);
    while (device.state === null) await wait(20);
    return device;
  };
  const crews: Crew[] = [];
  const ended: Ended[] = [];
  for (const bay of names) {
    crews.push({
      bay,
      technician: await connected(bay, 'technician', 'tablet'),
      otherLeader: await connected(bay, 'technician', 'other tablet'),
      second: await connected(bay, 'second', 'telephone'),
      flooder: await connected(bay, 'technician', 'flooder'),
      supervisor: bay === names[0] ? await connected(bay, 'supervisor', 'office') : null,
    });
    const gone = await connected(bay, 'second', 'let go of');
    const device = gone.connection.device;
    await gone.do({ do: 'forget', device }, 2000);
    gone.close();
    ended.push({ device, token: gone.who.token, address: gone.who.address });
  }
  return { crews, ended };
}
