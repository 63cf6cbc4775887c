/** The renderer's files under `app://afterheat/`, with the same security headers as on the web. */
import type { Protocol } from 'electron';
import { SECURITY_HEADERS } from '../web/headers.ts';
import type { StaticFiles } from '../web/static-files.ts';
import { PAGE_ORIGIN } from './window.ts';

export const PAGE_SCHEME = new URL(PAGE_ORIGIN).protocol.slice(0, -1);

/** Makes the scheme a standard, secure one; called before the app is ready. */
export function registerScheme(protocol: Pick<Protocol, 'registerSchemesAsPrivileged'>): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: PAGE_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

/** Answers the page's requests for its files; anything else is not found. */
export function servePages(protocol: Pick<Protocol, 'handle'>, files: StaticFiles): void {
  protocol.handle(PAGE_SCHEME, async (request) => {
    const { host, pathname } = new URL(request.url);
    const file = host === new URL(PAGE_ORIGIN).host && request.method === 'GET' ? await files(pathname) : null;
    if (file === null) return new Response(null, { status: 404, headers: SECURITY_HEADERS });
    return new Response(file.body, { headers: { ...SECURITY_HEADERS, 'content-type': file.type } });
  });
}
