/** One test per attack on the web host: each is refused, and changes nothing. */
import { request as httpRequest } from 'node:http';
import { createConnection } from 'node:net';
import { networkInterfaces } from 'node:os';
import { mkdir, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { MOST_BYTES } from '../../../app/documents/read-document.ts';
import { listen } from '../../../app/web/listen.ts';
import { createPairing } from '../../../app/web/pairing.ts';
import { openStaticFiles } from '../../../app/web/static-files.ts';
import { emptyFolder } from '../../support/folder.ts';
import { ORIGIN, OWN, client } from './client.ts';
import { standInHost } from '../../support/stand-in-host.ts';

describe('an asker that is not paired', () => {
  test.each([
    ['GET', '/api/documents'],
    ['GET', '/api/sessions/supper'],
    ['GET', '/api/kitchens/small-kitchen'],
    ['GET', '/api/plans/supper-plan'],
    ['POST', '/api/plans'],
    ['POST', '/api/kitchens'],
    ['POST', '/api/kitchen-figures'],
    ['POST', '/api/plan-figures'],
    ['POST', '/api/jobs'],
    ['GET', '/api/jobs/1/events'],
    ['POST', '/api/jobs/1/stop'],
    ['GET', '/api/nothing'],
  ])('gets nothing from %s %s', async (method, path) => {
    const { ask, post, host } = client();
    const response = method === 'GET' ? await ask(path, { headers: OWN }) : await post(path, {});
    expect(response.status).toBe(401);
    expect([host.jobs.length, host.saved.length]).toEqual([0, 0]);
  });

  test('gets nothing with a cookie of its own making', async () => {
    const { ask, pair } = client();
    await pair();
    const response = await ask('/api/documents', { headers: { ...OWN, cookie: 'afterheat-4123=guessed' } });
    expect(response.status).toBe(401);
  });
});

describe('the start code', () => {
  test('cannot be guessed', async () => {
    const { post } = client();
    for (const body of [{ code: '' }, { code: 'guess' }, { code: null }, {}, null, '{"code":'])
      expect((await post('/api/pair', body)).status).toBe(403);
  });

  test('works once: who reads it off the screen later comes too late', async () => {
    const { post, pair, pairing } = client();
    await pair();
    const again = await post('/api/pair', { code: pairing.code });
    expect([again.status, again.headers.get('set-cookie')]).toEqual([403, null]);
  });

  test('is traded for a cookie that scripts cannot read and other sites cannot send', async () => {
    const { post, pairing } = client();
    const cookie = (await post('/api/pair', { code: pairing.code })).headers.get('set-cookie')!;
    expect(cookie).toMatch(/^afterheat-4123=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/);
  });

  test('is another at each start', () => {
    const codes = new Set(Array.from({ length: 20 }, () => createPairing().code));
    expect(codes.size).toBe(20);
  });
});

describe('a page of another site', () => {
  test('that posts with the cookie is refused by its origin', async () => {
    const { post, pair, host } = client();
    const cookie = await pair();
    const response = await post('/api/jobs', { session: 'supper' }, { cookie, origin: 'https://evil.example' });
    expect([response.status, host.jobs.length]).toEqual([403, 0]);
  });

  test('that hides its origin is refused when it posts', async () => {
    const { pair, ask, host } = client();
    const cookie = await pair();
    const bare = {
      method: 'POST',
      headers: { ...OWN, cookie, 'content-type': 'application/json' },
      body: '{"session":"supper"}',
    };
    expect((await ask('/api/jobs', bare)).status).toBe(403);
    expect((await ask('/api/jobs', { ...bare, headers: { ...bare.headers, origin: 'null' } })).status).toBe(403);
    expect(host.jobs).toHaveLength(0);
  });

  test('that reads is refused by its origin, or by what the browser says of it', async () => {
    const { pair, ask } = client();
    const cookie = await pair();
    const headers = { ...OWN, cookie };
    expect((await ask('/api/documents', { headers: { ...headers, origin: 'https://evil.example' } })).status).toBe(403);
    expect((await ask('/api/documents', { headers: { ...headers, 'sec-fetch-site': 'cross-site' } })).status).toBe(403);
    expect((await ask('/api/documents', { headers: { ...headers, 'sec-fetch-site': 'same-site' } })).status).toBe(403);
  });

  test('that sends a form is refused, since no form is JSON', async () => {
    const { post, pair, host } = client();
    const cookie = await pair();
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', ''])
      expect((await post('/api/jobs', { session: 'supper' }, { cookie, 'content-type': type })).status).toBe(415);
    expect(host.jobs).toHaveLength(0);
  });

  test('gets no leave to read anything across origins', async () => {
    const { ask } = client();
    const response = await ask('/', { headers: { ...OWN, origin: ORIGIN }, method: 'OPTIONS' });
    expect([...response.headers.keys()].filter((name) => name.startsWith('access-control-'))).toEqual([]);
  });
});

test('a foreign name that resolves to this machine is refused, page and all', async () => {
  const { ask } = client();
  for (const host of ['evil.example:4123', 'evil.example', '127.0.0.1', '127.0.0.1:80', 'localhost:4123', '[::1]:4123'])
    expect((await ask('/', { headers: { host } })).status).toBe(403);
});

describe('a body', () => {
  test('larger than a request needs is not read', async () => {
    const { post, pair, host } = client();
    const cookie = await pair();
    const response = await post('/api/jobs', { session: 'supper', note: 'x'.repeat(20_000) }, { cookie });
    expect([response.status, host.jobs.length]).toEqual([413, 0]);
  });

  test('larger than any plan is not read', async () => {
    const { post, pair, host } = client();
    const cookie = await pair();
    const response = await post('/api/plans', { note: 'x'.repeat(MOST_BYTES) }, { cookie });
    expect([response.status, host.saved.length]).toEqual([413, 0]);
  });

  test('that is no request is refused with its faults', async () => {
    const { post, pair, host } = client();
    const cookie = await pair();
    for (const body of [
      '{',
      '[]',
      { session: '../../etc/passwd' },
      { session: 'a', seed: -1 },
      { session: 'a', __proto__x: 1 },
    ])
      expect((await post('/api/jobs', body, { cookie })).status).toBe(422);
    expect(host.jobs).toHaveLength(0);
  });
});

test('a method that no route has is refused', async () => {
  const { ask, pair } = client();
  const cookie = await pair();
  for (const method of ['PUT', 'DELETE', 'PATCH'])
    expect((await ask('/api/plans/supper-plan', { method, headers: { ...OWN, origin: ORIGIN, cookie } })).status).toBe(
      404,
    );
});

test('every answer, refusals too, carries the security headers', async () => {
  const { ask } = client();
  const answers = await Promise.all([
    ask('/', { headers: OWN }),
    ask('/api/documents', { headers: OWN }),
    ask('/', { headers: { host: 'evil.example' } }),
  ]);
  for (const { headers } of answers) {
    expect(headers.get('content-security-policy')).toBe(
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'",
    );
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('referrer-policy')).toBe('same-origin');
    expect(headers.get('x-frame-options')).toBe('DENY');
    expect(headers.get('cache-control')).toBe('no-store');
  }
});

describe('over the wire', () => {
  async function served(): Promise<{ readonly origin: string; readonly port: number }> {
    const folder = await emptyFolder();
    await writeFile(join(folder, 'index.html'), '<!doctype html><title>page</title>');
    await mkdir(join(folder, 'assets'));
    await writeFile(join(folder, 'assets', 'a-1.js'), '1');
    await writeFile(join(folder, 'secret.env'), 'x');
    await symlink('/etc/passwd', join(folder, 'passwd.txt'));
    const { origin, close } = await listen({
      host: standInHost(),
      pairing: createPairing(),
      files: await openStaticFiles(folder),
    });
    onTestFinished(close);
    return { origin, port: Number(new URL(origin).port) };
  }
  /** The status of a path that is sent as it stands, which `fetch` would tidy. */
  const statusOf = (port: number, path: string): Promise<number> =>
    new Promise((resolve, reject) => {
      httpRequest({ host: '127.0.0.1', port, path }, (response) => {
        response.resume();
        resolve(response.statusCode!);
      })
        .on('error', reject)
        .end();
    });

  test('no path leads out of the pages’ folder', async () => {
    const { port } = await served();
    expect(await statusOf(port, '/')).toBe(200);
    expect(await statusOf(port, '/assets/a-1.js')).toBe(200);
    const paths = [
      '/../package.json',
      '/..%2f..%2fetc/passwd',
      '/%2e%2e/%2e%2e/etc/passwd',
      '/assets/../../../etc/passwd',
      '/..\\..\\etc\\passwd',
      '/passwd.txt',
      '/secret.env',
      '//etc/passwd',
      '/index.html%00.js',
    ];
    const statuses = await Promise.all(paths.map((path) => statusOf(port, path)));
    // A path that is no URL path at all is a bad request.
    expect(statuses.filter((status) => status !== 404 && status !== 400)).toEqual([]);
  });

  test('the host is not reachable by another address of the machine', async () => {
    const { port } = await served();
    const others = Object.values(networkInterfaces())
      .flatMap((addresses) => addresses ?? [])
      .filter(({ internal, family, scopeid }) => !internal && (family === 'IPv4' || scopeid === 0))
      .map(({ address }) => address);
    const refusedAt = (host: string): Promise<boolean> =>
      new Promise((resolve) => {
        const socket = createConnection({ host, port, timeout: 2000 });
        socket.on('connect', () => resolve(socket.destroy().destroyed && false));
        socket.on('timeout', () => resolve(socket.destroy().destroyed));
        socket.on('error', () => resolve(true));
      });
    expect(await refusedAt('::1')).toBe(true);
    expect(await Promise.all(others.map(refusedAt))).toEqual(others.map(() => true));
  });

  test('a taken port is told, not silently exchanged', async () => {
    const { port } = await served();
    const again = listen({ host: standInHost(), pairing: createPairing(), files: () => Promise.resolve(null) }, port);
    await expect(again).rejects.toThrow('EADDRINUSE');
  });
});
