/** The checks that come before any route: who is spoken to, from where, and what is sent. */
import type { Context, MiddlewareHandler } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { bodyLimit } from 'hono/body-limit';
import { getCookie } from 'hono/cookie';
import type { Refusal } from './contract.ts';
import { SECURITY_HEADERS } from './headers.ts';
import type { Pairing } from './pairing.ts';

/** An answer that is no answer, with a sentence for the page. */
export function refuse(c: Context, status: ContentfulStatusCode, error: string): Response {
  return c.json<Refusal>({ error }, status);
}

/** Puts the security headers on every answer, and keeps answers of the interface out of every cache. */
export const withHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of Object.entries(SECURITY_HEADERS)) c.res.headers.set(name, value);
  if (!c.res.headers.has('cache-control')) c.res.headers.set('cache-control', 'no-store');
};

/**
 * Refuses whoever reached us under another name (a foreign name that resolves to this machine) or asks from another site's page.
 *
 * @param origin ours, such as `http://127.0.0.1:4123`
 */
export function ownOriginOnly(origin: string): MiddlewareHandler {
  const host = new URL(origin).host;
  return async (c, next) => {
    if (c.req.header('host') !== host) return refuse(c, 403, 'This address is not served here.');
    const from = c.req.header('origin');
    const changes = c.req.method !== 'GET' && c.req.method !== 'HEAD';
    const site = c.req.header('sec-fetch-site');
    // Pages can forge neither header. A browser that leaves out the one says the same with the other.
    if (from === undefined ? changes && site !== 'same-origin' : from !== origin)
      return refuse(c, 403, 'Asked from another site.');
    const foreign = site !== undefined && site !== 'same-origin' && site !== 'none';
    if (foreign && c.req.path.startsWith('/api/')) return refuse(c, 403, 'Asked from another site.');
    await next();
    return;
  };
}

/** Refuses bodies that are not said to be JSON: a form of another site can send no other. */
export const jsonOnly: MiddlewareHandler = async (c, next) => {
  const type = c.req.header('content-type')?.split(';')[0]?.trim().toLowerCase();
  if (c.req.method === 'POST' && type !== 'application/json') return refuse(c, 415, 'The body must be JSON.');
  await next();
  return;
};

/** Refuses bodies longer than the route takes, bytes. */
export function shortBodies(mostOf: (path: string) => number): MiddlewareHandler {
  return (c, next) =>
    bodyLimit({ maxSize: mostOf(c.req.path), onError: (over) => refuse(over, 413, 'The body is too large.') })(c, next);
}

/** Refuses whoever has not traded the start code for the cookie. */
export function pairedOnly(pairing: Pairing, cookie: string): MiddlewareHandler {
  return async (c, next) => {
    if (!pairing.knows(getCookie(c, cookie))) return refuse(c, 401, 'This page is not paired. Start Afterheat again.');
    await next();
    return;
  };
}
