import { once } from 'node:events';
import { type AddressInfo, connect, createServer, type Socket } from 'node:net';
import { expect, onTestFinished, test } from 'vitest';
import { watchSockets } from '../../src/server/http/bare-sockets.ts';
import { type Face, Faces } from '../../src/server/http/faces.ts';
import { KnownAddresses } from '../../src/server/http/known-addresses.ts';

test('Strangers of one network count as one, however many addresses it has', () => {
  const faces = new Faces();
  const from = (address: string): Face => ({
    address,
    pairing: null,
    send: () => {},
    replaced: () => {},
    checkAlive: () => {},
    look: () => {},
  });
  for (const host of ['1', '2', 'ffff:1', 'a:b:c:d'])
    faces.add(from(`fd00:1:2:3:${host.includes('b') ? '' : ':'}${host}`));
  faces.add(from('192.168.1.7'));
  expect(faces.strangers('fd00:1:2:3::9')).toBe(4);
  expect(faces.strangers('fd00:1:2:4::9')).toBe(0);
  expect(faces.strangers('::ffff:192.168.1.7')).toBe(1);
});

test('Where strangers have taken all places there is one for the address of a paired device', async () => {
  const known = new KnownAddresses();
  known.note('127.0.0.9');
  const server = createServer();
  const close = watchSockets(server, known, { ofOne: 10, ofAll: 3, share: 2 });
  await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => {
    close();
    server.close();
  });
  const { port } = server.address() as AddressInfo;
  const open = async (localAddress: string): Promise<Socket> => {
    const socket = connect({ port, host: '127.0.0.1', localAddress });
    socket.on('error', () => {});
    const taken = once(server, 'connection');
    await once(socket, 'connect');
    await taken;
    return socket;
  };
  for (let count = 0; count < 3; count += 1) await open('127.0.0.2');
  const refused = await open('127.0.0.3');
  await once(refused, 'close');
  const device = await open('127.0.0.9');
  // Whatever the server closed would be closed by now: it did so as it took it.
  expect(device.destroyed).toBe(false);
  device.write('x');
  await new Promise(resolve => setTimeout(resolve, 50));
  expect(device.destroyed).toBe(false);
});
