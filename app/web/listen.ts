/** The web host on a port of this machine, reachable from this machine alone. */
import { createAdaptorServer } from '@hono/node-server';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { CODE_KEY } from './contract.ts';
import { createRoutes, type RouteParts } from './routes.ts';

export interface Listening {
  /** Ours, such as `http://127.0.0.1:4123`. */
  readonly origin: string;
  /** The address that pairs the browser which opens it, once. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

/**
 * Serves the host on 127.0.0.1.
 *
 * @param port 0: any that is free
 * @returns where it is served, once it is; rejects where the port is taken
 */
export async function listen(parts: Omit<RouteParts, 'origin'>, port = 0): Promise<Listening> {
  let fetch: (request: Request) => Response | Promise<Response> = () => new Response(null, { status: 503 });
  const server = createAdaptorServer({ fetch: (request) => fetch(request) }) as Server;
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const routes = createRoutes({ ...parts, origin });
  fetch = (request) => routes.fetch(request);
  return {
    origin,
    address: `${origin}/#${CODE_KEY}=${parts.pairing.code}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
