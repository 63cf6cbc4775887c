/** The `Host` as a function from Request to Response. The routes are listed in `contract.ts`. */
import { Hono, type Context } from 'hono';
import { setCookie } from 'hono/cookie';
import { streamSSE } from 'hono/streaming';
import type { Answer, HelpResult, Host, PlanResult } from '../api.ts';
import { readJson } from '../documents/json-text.ts';
import { MOST_BYTES } from '../documents/read-document.ts';
import { readPlanRequest } from '../host/plan-request.ts';
import { jsonOnly, ownOriginOnly, pairedOnly, refuse, shortBodies, withHeaders } from './guard.ts';
import { createJobs } from './jobs.ts';
import type { Pairing } from './pairing.ts';
import type { StaticFiles } from './static-files.ts';

/** Longest body of everything but a document, bytes. */
const SMALL_BODY = 16 * 1024;
/** Routes that take a whole document. */
const DOCUMENT_ROUTES: ReadonlySet<string> = new Set([
  '/api/plans',
  '/api/kitchens',
  '/api/kitchen-figures',
  '/api/plan-figures',
]);
/** A line that keeps a silent stream open, ms. */
const HEARTBEAT_MS = 15_000;

export interface RouteParts {
  readonly host: Host;
  readonly pairing: Pairing;
  readonly files: StaticFiles;
  /** Ours, such as `http://127.0.0.1:4123`. */
  readonly origin: string;
}

/** The routes over a host. */
export function createRoutes({ host, pairing, files, origin }: RouteParts): Hono {
  const routes = new Hono();
  const jobs = createJobs(host);
  // Cookies do not tell ports apart, so two programs on one machine need two names.
  const cookie = `afterheat-${new URL(origin).port}`;

  routes.use(withHeaders);
  routes.use(ownOriginOnly(origin));
  routes.use('/api/*', jsonOnly);
  routes.use(
    '/api/*',
    shortBodies((path) => (DOCUMENT_ROUTES.has(path) ? MOST_BYTES : SMALL_BODY)),
  );

  routes.post('/api/pair', async (c) => {
    const body = await jsonBody(c);
    const code = typeof body === 'object' && body !== null && 'code' in body ? body.code : null;
    const value = typeof code === 'string' ? pairing.trade(code) : null;
    if (value === null) return refuse(c, 403, 'The start code is wrong or was used. Start Afterheat again.');
    setCookie(c, cookie, value, { httpOnly: true, sameSite: 'Strict', path: '/' });
    return c.body(null, 204);
  });

  routes.use('/api/*', pairedOnly(pairing, cookie));

  routes.get('/api/documents', async (c) => c.json(await host.list()));
  routes.get('/api/sessions/:id', async (c) => answer(c, await host.session(c.req.param('id'))));
  routes.get('/api/kitchens/:id', async (c) => answer(c, await host.kitchen(c.req.param('id'))));
  routes.get('/api/plans/:id', async (c) => answer(c, await host.plan(c.req.param('id'))));
  routes.post('/api/plans', async (c) => {
    const body = await jsonBody(c);
    // `savePlan` reads it as any document from outside.
    return answer(c, await host.savePlan(body as Parameters<Host['savePlan']>[0]));
  });

  routes.post('/api/kitchens', async (c) => {
    const body = await jsonBody(c);
    // `saveKitchen` reads it as any document from outside.
    return answer(c, await host.saveKitchen(body as Parameters<Host['saveKitchen']>[0]));
  });

  routes.post('/api/kitchen-figures', async (c) => {
    const body = await jsonBody(c);
    return answer(c, await host.kitchenFigures(body as Parameters<Host['kitchenFigures']>[0]));
  });

  routes.post('/api/plan-figures', async (c) => {
    const body = await jsonBody(c);
    return answer(c, await host.planFigures(body as Parameters<Host['planFigures']>[0]));
  });

  routes.post('/api/jobs', async (c) => {
    const request = readPlanRequest(await jsonBody(c));
    if (!request.ok) return answer(c, request);
    const job = jobs.start(request.value);
    return job === null ? refuse(c, 429, 'Too many plans are being made.') : c.json({ job }, 201);
  });
  routes.post('/api/helps', async (c) => {
    const request = readPlanRequest(await jsonBody(c));
    if (!request.ok) return answer(c, request);
    const job = jobs.startHelp(request.value);
    return job === null ? refuse(c, 429, 'Too many plans are being made.') : c.json({ job }, 201);
  });
  routes.post('/api/jobs/:job/stop', (c) =>
    jobs.stop(c.req.param('job')) ? c.body(null, 204) : refuse(c, 404, 'There is no such job.'),
  );
  routes.get('/api/jobs/:job/events', (c) => follow(c, c.req.param('job')));

  const follow = (c: Context, job: string): Response => {
    if (!jobs.has(job)) return refuse(c, 404, 'There is no such job.');
    return streamSSE(c, async (stream) => {
      let cease: (() => void) | null = null;
      const heartbeat = setInterval(() => void stream.write(': still planning\n\n'), HEARTBEAT_MS);
      const gone = new Promise<null>((resolve) => stream.onAbort(() => resolve(null)));
      const done = new Promise<PlanResult | HelpResult>((resolve) => {
        cease = jobs.follow(job, {
          onProgress: (progress) => void stream.writeSSE({ event: 'progress', data: JSON.stringify(progress) }),
          onDone: resolve,
        });
      });
      const result = await Promise.race([done, gone]);
      clearInterval(heartbeat);
      (cease as (() => void) | null)?.();
      if (result !== null) await stream.writeSSE({ event: 'done', data: JSON.stringify(result) });
    });
  };

  routes.all('/api/*', (c) => refuse(c, 404, 'There is no such route.'));
  routes.get('*', async (c) => {
    const file = await files(c.req.path);
    if (file === null) return refuse(c, 404, 'There is no such page.');
    c.header('content-type', file.type);
    if (file.lasting) c.header('cache-control', 'public, max-age=31536000, immutable');
    return c.body(file.body);
  });
  routes.all('*', (c) => refuse(c, 404, 'There is no such page.'));
  routes.onError((error, c) => {
    console.error(error);
    return refuse(c, 500, 'Afterheat failed at this. Its terminal says more.');
  });
  return routes;
}

function answer<T>(c: Context, given: Answer<T>): Response {
  return c.json(given, given.ok ? 200 : 422);
}

/** The body read strictly; null where it is no JSON, which no route takes for an answer. */
async function jsonBody(c: Context): Promise<unknown> {
  const read = readJson(await c.req.text());
  return read.ok ? read.value : null;
}
