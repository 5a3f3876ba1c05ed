import type { X509Certificate } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { describe, expect, it } from 'vitest';
import { verifyLog } from '../../src/record/index.ts';
import { AWAY_AFTER_MS, PROTOCOL_VERSION } from '../../src/server/protocol/index.ts';
import { startFirstFire } from '../helpers/first-fire.ts';
import { scratchFolder } from '../helpers/scratch.ts';
import { Face } from '../server/support/face.ts';
import { get, post } from '../server/support/https.ts';

/** Served by the user's own command, and what its first words say of it. */
async function serve(npm: boolean) {
  const shop = join(scratchFolder(), 'shop');
  const args = ['serve', '--port', '0', '--host', '127.0.0.1', '--shop', shop];
  const server = startFirstFire(args, { npm });
  await server.tells('supervisor   ');
  const [, base = ''] = /itself: (https:\/\/localhost:\d+)\//.exec(server.told) ?? [];
  const [, fingerprint = ''] =
    /does not know\.[^\n]*\n((?:[0-9A-F]{2}:){31}[0-9A-F]{2})/.exec(server.told) ?? [];
  const codeOf = (role: string) =>
    new RegExp(`${role}\\s+(\\d{3}) (\\d{3})`).exec(server.told)?.slice(1).join('') ?? '';
  return { server, base, shop, fingerprint, codeOf };
}

function certificateOf(base: string): Promise<X509Certificate> {
  const { hostname, port } = new URL(base);
  return new Promise((resolve, reject) => {
    const socket = connect({ host: hostname, port: Number(port), rejectUnauthorized: false }, () => {
      const certificate = socket.getPeerX509Certificate();
      socket.destroy();
      if (certificate) resolve(certificate);
      else reject(new Error('The server shows no certificate.'));
    });
    socket.on('error', reject);
  });
}

describe('the server', () => {
  it('comes up with the certificate that it names, and answers by https', async () => {
    const { base, fingerprint } = await serve(false);
    expect((await certificateOf(base)).fingerprint256).toBe(fingerprint);
    expect((await get(base, '/api/bays')).status).toBeLessThan(500);
    expect((await get(base, '/api/no-such-thing')).status).toBe(404);
  });

  it('pairs a device by the code in the terminal, and runs a session whose record verifies', async () => {
    const { server, base, shop, codeOf } = await serve(false);
    const paired = await post(`${base}/api/pair`, {
      v: PROTOCOL_VERSION,
      code: codeOf('technician'),
      device: 'tablet',
    });
    expect(paired.status, paired.body).toBe(200);
    const face = await Face.paired(base, JSON.parse(paired.body).token);
    await face.do({ do: 'begin' });
    await face.until(() => face.key === 'job.card.asking');
    server.signal('SIGTERM');
    expect((await server.ended).exitCode).toBe(0);
    const records = readdirSync(shop, { recursive: true, encoding: 'utf8' }).filter(
      name => name.endsWith('.jsonl') && !name.endsWith('owners.jsonl'),
    );
    expect(records).toHaveLength(1);
    for (const record of records) expect(await verifyLog(join(shop, record))).toMatchObject({ ok: true });
  });

  it('lets no stop wait that comes while it ends: it is answered, or its line is closed, and people are told; then it is gone', async () => {
    const { server, base, codeOf } = await serve(false);
    const { body } = await post(`${base}/api/pair`, {
      v: PROTOCOL_VERSION,
      code: codeOf('technician'),
      device: 'tablet',
    });
    const face = await Face.paired(base, JSON.parse(body).token);
    await face.do({ do: 'begin' });
    await face.until(() => face.key === 'job.card.asking');
    server.signal('SIGTERM');
    const touchedMs = performance.now();
    const answer = await face.do({ do: 'stop' }).catch(() => 'closed');
    expect(answer === 'closed' ? face.closeCode : answer).toEqual(
      answer === 'closed' ? 1001 : expect.objectContaining({ type: 'ack', stop: 'stopped' }),
    );
    expect(performance.now() - touchedMs).toBeLessThan(AWAY_AFTER_MS / 2);
    expect((await server.ended).exitCode).toBe(0);
    // Nothing that waits for whoever led keeps it.
    expect(performance.now() - touchedMs).toBeLessThan(AWAY_AFTER_MS);
  });

  it('lets go of every line at once where it is ended twice: then people are told, too', async () => {
    const { server, base, codeOf } = await serve(false);
    const { body } = await post(`${base}/api/pair`, {
      v: PROTOCOL_VERSION,
      code: codeOf('second'),
      device: 'phone',
    });
    const face = await Face.paired(base, JSON.parse(body).token);
    server.signal('SIGINT');
    await server.tells('Ending; sessions');
    server.signal('SIGINT');
    await face.until(() => face.closeCode !== null);
    await server.ended;
  });

  it.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    'ends with exit code 0 on %s, and says so',
    async signal => {
      const { server } = await serve(false);
      server.signal(signal);
      const { exitCode, stdout } = await server.ended;
      expect(stdout).toContain(
        'Ending; sessions that go on can be gone on with by serving the same folder again.',
      );
      expect(exitCode).toBe(0);
    },
  );

  it('ends in the same way by one Ctrl-C under npm, which tells of the signal instead of the exit code', async () => {
    const { server } = await serve(true);
    server.signal('SIGINT');
    expect((await server.ended).stdout).toContain('Ending; sessions');
  });
});
