import { X509Certificate } from 'node:crypto';
import { connect } from 'node:tls';

/** The certificate that a server gives out to whoever is to trust it; as bytes, where the other helpers read text. */
export async function takeAuthority(base: string): Promise<X509Certificate> {
  const { hostname, port, host } = new URL(base);
  const answer = await new Promise<Buffer>((resolve, reject) => {
    const socket = connect({ host: hostname, port: Number(port), rejectUnauthorized: false }, () => {
      socket.write(`GET /trust/first-fire-authority.crt HTTP/1.0\r\nhost: ${host}\r\n\r\n`);
    });
    const parts: Buffer[] = [];
    socket.on('data', (part: Buffer) => parts.push(part));
    socket.on('end', () => resolve(Buffer.concat(parts)));
    socket.on('error', reject);
  });
  return new X509Certificate(answer.subarray(answer.indexOf('\r\n\r\n') + 4));
}
