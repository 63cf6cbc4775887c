/** The window's channels: what our own page may ask, and each way in which another, or a malformed call, is refused. */
import { describe, expect, test } from 'vitest';
import type { HelpResult, PlanProgress, PlanResult } from '../../../app/api.ts';
import { CHANNEL } from '../../../app/desktop/bridge.ts';
import { bridgedHost } from '../../../app/desktop/bridged-host.ts';
import { serveHost } from '../../../app/desktop/ipc.ts';
import { smallKitchen } from '../../support/documents.ts';
import { StandInIpc, asIpcMain, asIpcRenderer, type Frame } from '../../support/electron-stand-in.ts';
import { standInHost } from '../../support/stand-in-host.ts';
import { session, supper } from '../../support/supper.ts';

const OURS: Frame = { url: 'app://afterheat/index.html', parent: null };
const progress: PlanProgress = { value: 60, bound: 50, share: 0.5 };
const planned: PlanResult = { kind: 'planned', plan: supper, solveMs: 12, firstPlanMs: 3 };

function window(frame: Frame | null = OURS) {
  const ipc = new StandInIpc(frame);
  const host = standInHost();
  serveHost(asIpcMain(ipc), host);
  return { ipc, host, page: bridgedHost(asIpcRenderer(ipc)) };
}

describe('our own page', () => {
  test('asks the host as if it had it', async () => {
    const { page, host } = window();
    expect(await page.list()).toHaveLength(1);
    expect(await page.session(session.id)).toEqual({ ok: true, value: session });
    expect(await page.kitchen('none')).toMatchObject({ ok: false });
    expect(await page.plan(supper.id)).toEqual({ ok: true, value: supper });
    expect(await page.savePlan(supper)).toMatchObject({ ok: true });
    const kitchen = smallKitchen();
    expect(await page.saveKitchen(kitchen)).toMatchObject({ ok: true });
    expect(host.saved).toEqual([supper, kitchen]);
  });

  test('follows two jobs at once, each with its own progress and result', () => {
    const { page, host } = window();
    const told: string[] = [];
    for (const name of ['first', 'second'])
      page.startPlan(
        { session: 'supper' },
        {
          onProgress: ({ value }) => told.push(`${name} ${value}`),
          onDone: ({ kind }) => told.push(`${name} ${kind}`),
        },
      );
    host.jobs[1]!.events.onProgress(progress);
    host.jobs[0]!.events.onDone({ kind: 'unknown', reason: 'x' });
    host.jobs[1]!.events.onDone(planned);
    expect(told).toEqual(['second 60', 'first unknown', 'second planned']);
  });

  test('gets the best plan so far with its progress', () => {
    const { page, host } = window();
    const told: unknown[] = [];
    page.startPlan({ session: 'supper' }, { onProgress: (each) => told.push(each), onDone: () => {} });
    host.jobs[0]!.events.onProgress({ ...progress, plan: supper });
    expect(told).toEqual([{ ...progress, plan: supper }]);
  });

  test('asks what would help, and is told and stops it as a plan', () => {
    const { page, host } = window();
    const told: HelpResult[] = [];
    const { stop } = page.startHelp({ session: 'supper' }, { onProgress: () => {}, onDone: (each) => told.push(each) });
    stop();
    host.helps[0]!.events.onDone({ kind: 'unknown', reason: 'x' });
    expect([host.jobs.length, host.helps[0]!.stopped, told]).toEqual([0, true, [{ kind: 'unknown', reason: 'x' }]]);
  });

  test('stops a job', () => {
    const { page, host } = window();
    page.startPlan({ session: 'supper' }, { onProgress: () => {}, onDone: () => {} }).stop();
    expect(host.jobs[0]!.stopped).toBe(true);
  });

  test('that is closed stops its jobs, and is told nothing more', () => {
    const { page, host, ipc } = window();
    const told: PlanResult[] = [];
    page.startPlan({ session: 'supper' }, { onProgress: () => {}, onDone: (result) => told.push(result) });
    ipc.contents.destroyed = true;
    ipc.contents.emit('destroyed');
    host.jobs[0]!.events.onDone(planned);
    expect([host.jobs[0]!.stopped, told]).toEqual([true, []]);
  });

  test('gets the faults of a request that is none', () => {
    const { page, host } = window();
    const told: PlanResult[] = [];
    page.startPlan({ session: '../x' }, { onProgress: () => {}, onDone: (result) => told.push(result) });
    expect(told).toMatchObject([{ kind: 'refused', faults: [{ path: 'session' }] }]);
    expect(host.jobs).toHaveLength(0);
  });

  test('may not have more than eight jobs under way', () => {
    const { page, host } = window();
    const told: string[] = [];
    for (let job = 0; job < 9; job += 1)
      page.startPlan({ session: 'supper' }, { onProgress: () => {}, onDone: ({ kind }) => told.push(kind) });
    expect([host.jobs.length, told]).toEqual([8, ['unknown']]);
  });
});

describe('a foreign sender', () => {
  test.each<[string, Frame | null]>([
    ['a page of another site', { url: 'https://evil.example/', parent: null }],
    ['a file', { url: 'file:///tmp/index.html', parent: null }],
    ['a site whose name begins as ours', { url: 'app://afterheat.evil.example/', parent: null }],
    ['a frame within our page', { url: 'app://afterheat/index.html', parent: OURS }],
    ['a frame that is gone', null],
    ['a page without an address', { url: '', parent: null }],
  ])('%s is refused', async (_name, frame) => {
    const { ipc, host } = window(frame);
    await expect(ipc.invoke(CHANNEL.call, { call: 'list', args: [] })).rejects.toThrow('refused');
    ipc.send(CHANNEL.start, { job: 1, request: { session: 'supper' } });
    ipc.send(CHANNEL.stop, { job: 1 });
    expect(host.jobs).toHaveLength(0);
  });
});

describe('a malformed call', () => {
  test.each<[string, unknown]>([
    ['nothing', undefined],
    ['a call that there is none of', { call: 'readFile', args: ['/etc/passwd'] }],
    ['a name from the prototype', { call: 'constructor', args: [] }],
    ['a call with too many arguments', { call: 'list', args: [1] }],
    ['a call with too few', { call: 'session', args: [] }],
    ['an id that is no text', { call: 'plan', args: [{ toString: 1 }] }],
    ['an id without end', { call: 'plan', args: ['x'.repeat(10_000)] }],
    ['a call with a key too many', { call: 'list', args: [], more: 1 }],
  ])('%s is refused', async (_name, given) => {
    const { ipc } = window();
    await expect(ipc.invoke(CHANNEL.call, given)).rejects.toThrow('refused');
  });

  test.each<[string, unknown]>([
    ['nothing', undefined],
    ['no number', { request: { session: 'supper' } }],
    ['a number that is none', { job: 'one', request: { session: 'supper' } }],
    ['a negative number', { job: -1, request: { session: 'supper' } }],
  ])('a start with %s starts nothing', (_name, given) => {
    const { ipc, host } = window();
    ipc.send(CHANNEL.start, given);
    ipc.send(CHANNEL.stop, given);
    expect(host.jobs).toHaveLength(0);
  });

  test('a job’s number used again while it runs starts nothing', () => {
    const { ipc, host } = window();
    ipc.send(CHANNEL.start, { job: 1, request: { session: 'supper' } });
    ipc.send(CHANNEL.start, { job: 1, request: { session: 'supper' } });
    expect(host.jobs).toHaveLength(1);
  });
});
