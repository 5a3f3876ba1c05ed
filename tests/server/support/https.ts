import { type RequestOptions, request } from 'node:https';

export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** One request, with its path as it is written: nothing is put right on the way, as a browser would. */
export function fetchRaw(
  base: string,
  path: string,
  options: RequestOptions = {},
  body?: string | Buffer,
): Promise<Answer> {
  const { hostname, port, host } = new URL(base);
  return new Promise((resolve, reject) => {
    const sent = request(
      {
        hostname,
        port,
        path,
        rejectUnauthorized: false,
        agent: false,
        ...options,
        headers: { host, origin: `https://${host}`, ...options.headers },
      },
      answer => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('end', () =>
          resolve({
            status: answer.statusCode ?? 0,
            headers: answer.headers,
            body: Buffer.concat(parts).toString('utf8'),
          }),
        );
      },
    );
    sent.on('error', reject);
    sent.end(body);
  });
}

/** Posts JSON as a page of the server would, from an address of the loop. */
export function post(
  url: string,
  data: unknown,
  headers: Record<string, string> = {},
  from = '127.0.0.1',
): Promise<Answer> {
  const { origin, pathname } = new URL(url);
  const body = JSON.stringify(data);
  return fetchRaw(
    origin,
    pathname,
    { method: 'POST', localAddress: from, headers: { 'content-type': 'application/json', ...headers } },
    body,
  );
}

export const get = (base: string, path: string, token?: string): Promise<Answer> =>
  fetchRaw(base, path, token === undefined ? {} : { headers: { authorization: `Bearer ${token}` } });
