/** A browser's side of the routes, called as a function. */
import { createPairing } from '../../../app/web/pairing.ts';
import { createRoutes } from '../../../app/web/routes.ts';
import type { StaticFiles } from '../../../app/web/static-files.ts';
import { standInHost } from '../../support/stand-in-host.ts';

export const ORIGIN = 'http://127.0.0.1:4123';
export const OWN = { host: '127.0.0.1:4123' };

const page: StaticFiles = (path) =>
  Promise.resolve(
    path === '/'
      ? { body: new TextEncoder().encode('<!doctype html>'), type: 'text/html; charset=utf-8', lasting: false }
      : null,
  );

/** Routes over a stand-in host, and ways to ask them. */
export function client() {
  const host = standInHost();
  const pairing = createPairing();
  const routes = createRoutes({ host, pairing, files: page, origin: ORIGIN });
  const ask = async (path: string, init: RequestInit = {}): Promise<Response> =>
    routes.request(`${ORIGIN}${path}`, init);
  const post = (path: string, body: unknown, headers: Record<string, string> = {}): Promise<Response> =>
    ask(path, {
      method: 'POST',
      headers: { ...OWN, origin: ORIGIN, 'content-type': 'application/json', ...headers },
      body: typeof body === 'string' ? body : JSON.stringify(body),
    });
  /** Trades the start code. @returns the cookie as a browser sends it back */
  const pair = async (): Promise<string> => {
    const response = await post('/api/pair', { code: pairing.code });
    return response.headers.get('set-cookie')!.split(';')[0]!;
  };
  return { host, pairing, ask, post, pair };
}

/** The server-sent events of a response, read to its end. */
export async function eventsOf(
  response: Response,
): Promise<readonly { readonly event: string; readonly data: unknown }[]> {
  const text = await response.text();
  return text
    .split('\n\n')
    .filter((block) => block.startsWith('event: '))
    .map((block) => {
      const [event, data] = block.split('\n');
      return { event: event!.slice('event: '.length), data: JSON.parse(data!.slice('data: '.length)) as unknown };
    });
}
