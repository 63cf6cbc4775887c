import { describe, expect, test } from 'vitest';
import type { HelpResult, PlanProgress, PlanResult } from '../../../app/api.ts';
import { createJobs } from '../../../app/web/jobs.ts';
import { smallKitchen } from '../../support/documents.ts';
import { session, supper } from '../../support/supper.ts';
import { OWN, client, eventsOf } from './client.ts';
import { standInHost } from '../../support/stand-in-host.ts';

const progress: PlanProgress = { value: 60, bound: 50, share: 0.5 };
const planned: PlanResult = { kind: 'planned', plan: supper, solveMs: 12, firstPlanMs: 3 };

async function paired() {
  const all = client();
  const cookie = await all.pair();
  return {
    ...all,
    get: (path: string) => all.ask(path, { headers: { ...OWN, cookie } }),
    send: (path: string, body: unknown) => all.post(path, body, { cookie }),
  };
}

describe('documents over the web', () => {
  test('are listed', async () => {
    const { get } = await paired();
    expect(await (await get('/api/documents')).json()).toMatchObject([{ kind: 'plan', id: supper.id }]);
  });

  test('come by their id', async () => {
    const { get } = await paired();
    const response = await get(`/api/sessions/${session.id}`);
    expect(response.status).toBe(200);
    expect(await response.json()).toEqual({ ok: true, value: session });
  });

  test('that are not there come as faults', async () => {
    const { get } = await paired();
    const response = await get('/api/kitchens/none');
    expect(response.status).toBe(422);
    expect(await response.json()).toMatchObject({ ok: false, faults: [{ document: 'kitchen none' }] });
  });

  test('a plan is handed to the host to be saved', async () => {
    const { send, host } = await paired();
    expect((await send('/api/plans', supper)).status).toBe(200);
    expect(host.saved).toEqual([supper]);
  });

  test('a kitchen is handed to the host to be saved', async () => {
    const { send, host } = await paired();
    const kitchen = smallKitchen();
    expect((await send('/api/kitchens', kitchen)).status).toBe(200);
    expect(host.saved).toEqual([kitchen]);
  });

  test('a plan that is broken JSON is handed on as nothing, and refused', async () => {
    const { send } = await paired();
    expect((await send('/api/plans', '{"kind":"plan"')).status).toBe(422);
  });
});

const answered: HelpResult = {
  kind: 'answered',
  report: { measure: 'finish', finish: 60, bound: 60, answers: [], open: 0, stopped: false, work: 1 },
};

describe('what would help, asked over the web', () => {
  test('tells progress and its answer as events', async () => {
    const { get, send, host } = await paired();
    const { job } = (await (await send('/api/helps', { session: 'supper' })).json()) as { job: string };
    expect(host.helps[0]!.request).toEqual({ session: 'supper' });
    expect(host.jobs).toEqual([]);
    const response = await get(`/api/jobs/${job}/events`);
    setImmediate(() => {
      host.helps[0]!.events.onProgress({ share: 0.5, report: answered.report });
      host.helps[0]!.events.onDone(answered);
    });
    expect(await eventsOf(response)).toEqual([
      { event: 'progress', data: { share: 0.5, report: answered.report } },
      { event: 'done', data: answered },
    ]);
  });

  test('is stopped as any job is', async () => {
    const { send, host } = await paired();
    const { job } = (await (await send('/api/helps', { session: 'supper' })).json()) as { job: string };
    expect((await send(`/api/jobs/${job}/stop`, {})).status).toBe(204);
    expect(host.helps[0]!.stopped).toBe(true);
  });

  test('in a request that is none is refused with its faults', async () => {
    const { send } = await paired();
    expect((await send('/api/helps', { session: 7 })).status).toBe(422);
  });
});

describe('a job over the web', () => {
  test('tells progress and its result as events, and ends', async () => {
    const { get, send, host } = await paired();
    const { job } = (await (await send('/api/jobs', { session: 'supper', seed: 2 })).json()) as { job: string };
    expect(host.jobs[0]!.request).toEqual({ session: 'supper', seed: 2 });
    const response = await get(`/api/jobs/${job}/events`);
    expect(response.headers.get('content-type')).toMatch('text/event-stream');
    setImmediate(() => {
      host.jobs[0]!.events.onProgress(progress);
      host.jobs[0]!.events.onDone(planned);
    });
    expect(await eventsOf(response)).toEqual([
      { event: 'progress', data: progress },
      { event: 'done', data: planned },
    ]);
  });

  test('asked again after its end, tells the last of each again', async () => {
    const { get, send, host } = await paired();
    const { job } = (await (await send('/api/jobs', { session: 'supper' })).json()) as { job: string };
    host.jobs[0]!.events.onProgress(progress);
    host.jobs[0]!.events.onDone(planned);
    const again = await eventsOf(await get(`/api/jobs/${job}/events`));
    expect(again.map(({ event }) => event)).toEqual(['progress', 'done']);
  });

  test('tells who follows late the best plan so far with the last progress', async () => {
    const { get, send, host } = await paired();
    const { job } = (await (await send('/api/jobs', { session: 'supper' })).json()) as { job: string };
    host.jobs[0]!.events.onProgress({ ...progress, plan: supper });
    host.jobs[0]!.events.onProgress({ ...progress, bound: 55 });
    host.jobs[0]!.events.onDone(planned);
    const again = await eventsOf(await get(`/api/jobs/${job}/events`));
    expect(again[0]).toEqual({ event: 'progress', data: { ...progress, bound: 55, plan: supper } });
  });

  test('is stopped when asked to', async () => {
    const { send, host } = await paired();
    const { job } = (await (await send('/api/jobs', { session: 'supper' })).json()) as { job: string };
    expect((await send(`/api/jobs/${job}/stop`, {})).status).toBe(204);
    expect(host.jobs[0]!.stopped).toBe(true);
  });

  test('that does not exist is neither followed nor stopped', async () => {
    const { get, send } = await paired();
    expect((await get('/api/jobs/none/events')).status).toBe(404);
    expect((await send('/api/jobs/none/stop', {})).status).toBe(404);
  });

  test('beyond the eighth under way has to wait', async () => {
    const { send, host } = await paired();
    for (let job = 0; job < 8; job += 1) expect((await send('/api/jobs', { session: 'supper' })).status).toBe(201);
    expect((await send('/api/jobs', { session: 'supper' })).status).toBe(429);
    host.jobs[0]!.events.onDone(planned);
    expect((await send('/api/jobs', { session: 'supper' })).status).toBe(201);
  });
});

describe('jobs', () => {
  const limits = { active: 8, kept: 2, aloneMs: 10 };
  const quiet = { onProgress: () => {}, onDone: () => {} };

  test('that nobody follows any more are stopped after a while', async () => {
    const host = standInHost();
    const jobs = createJobs(host, limits);
    const cease = jobs.follow(jobs.start({ session: 'supper' })!, quiet)!;
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(host.jobs[0]!.stopped).toBe(false);
    cease();
    await expect.poll(() => host.jobs[0]!.stopped).toBe(true);
  });

  test('that are done are kept, the newest of them', () => {
    const host = standInHost();
    const jobs = createJobs(host, limits);
    const ids = [1, 2, 3].map((seed) => jobs.start({ session: 'supper', seed })!);
    for (const { events } of host.jobs) events.onDone(planned);
    expect(ids.map((id) => jobs.has(id))).toEqual([false, true, true]);
  });
});
