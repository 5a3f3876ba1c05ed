import { connect, createServer, type Socket } from 'node:net';
import type { Browser } from 'playwright-core';
import { openBrowserToward } from './browser.ts';

/** A network between a browser and the laptop, which can swallow everything as one does that is out of reach. */
export interface Network {
  readonly browser: Browser;
  /** From now on nothing comes through, and no line is closed: neither those that are open nor those to come. */
  swallow(): void;
  /** New lines come through again; those from before stay dead, as behind another access point. */
  comesBack(): void;
  /** Ends all lines. */
  breakAll(): void;
  close(): Promise<void>;
}

/** Opens a browser for which `https://localhost:PORT` lies behind such a network. */
export async function openBehindNetwork(toPort: number): Promise<Network> {
  const lines = new Set<readonly [Socket, Socket]>();
  const hanging = new Set<Socket>();
  let swallows = false;
  const server = createServer(near => {
    near.on('error', () => {});
    if (swallows) {
      hanging.add(near);
      near.pause();
      return;
    }
    const far = connect(toPort, '127.0.0.1');
    const line = [near, far] as const;
    lines.add(line);
    far.on('error', () => {});
    /** Dead for good once the network has swallowed anything of it. */
    let isDead = false;
    const passes = (to: Socket) => (data: Buffer) => {
      isDead ||= swallows;
      if (!isDead) to.write(data);
    };
    const ends = (other: Socket) => () => {
      if (!isDead && !swallows) other.destroy();
    };
    near.on('data', passes(far)).on('close', ends(far));
    far.on('data', passes(near)).on('close', ends(near));
  });
  await new Promise<void>(resolve => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const address = server.address();
  if (typeof address !== 'object' || address === null) throw new Error('The network has no port.');
  const browser = await openBrowserToward(toPort, address.port);
  const breakAll = () => {
    for (const socket of [...[...lines].flat(), ...hanging]) socket.destroy();
    lines.clear();
    hanging.clear();
  };
  return {
    browser,
    swallow() {
      swallows = true;
    },
    comesBack() {
      swallows = false;
    },
    breakAll,
    async close() {
      await browser.close();
      breakAll();
      await new Promise(resolve => {
        server.close(resolve);
      });
    },
  };
}
