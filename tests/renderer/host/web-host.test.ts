import { describe, expect, test } from 'vitest';
import type { PlanProgress, PlanResult } from '../../../app/api.ts';
import { desktopHost } from '../../../renderer/host/desktop-host.ts';
import { codeIn, pair } from '../../../renderer/host/pairing.ts';
import { webHost, type EventStream } from '../../../renderer/host/web-host.ts';
import { standInHost } from '../../support/stand-in-host.ts';

interface Asked {
  readonly address: string;
  readonly method: string;
  readonly body: unknown;
}

/** A host whose program answers from a table. */
function program(answers: Readonly<Record<string, { status: number; body: unknown }>>) {
  const asked: Asked[] = [];
  const streams: (EventStream & { tell: (kind: string, data: unknown) => void; closed: boolean })[] = [];
  const ask = ((address: string, init?: RequestInit) => {
    const method = init?.method ?? 'GET';
    asked.push({ address, method, body: typeof init?.body === 'string' ? JSON.parse(init.body) : null });
    const found = answers[`${method} ${address}`] ?? { status: 404, body: { error: 'no such route' } };
    const body = found.status === 204 ? null : JSON.stringify(found.body);
    return Promise.resolve(new Response(body, { status: found.status }));
  }) as typeof fetch;
  const listen = (): EventStream => {
    const heard = new Map<string, (event: MessageEvent<string>) => void>();
    const stream = {
      addEventListener: (kind: string, ear: (event: MessageEvent<string>) => void) => void heard.set(kind, ear),
      onerror: null,
      readyState: 1,
      closed: false,
      close: () => (stream.closed = true),
      tell: (kind: string, data: unknown) => heard.get(kind)?.({ data: JSON.stringify(data) } as MessageEvent<string>),
    };
    streams.push(stream);
    return stream;
  };
  return { host: webHost({ ask, listen }), ask, asked, streams };
}

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));

describe('the host over HTTP', () => {
  test('asks for documents by their encoded ids; faults (422) are an answer', async () => {
    const faults = [{ document: 'a', path: '', found: 'b', wanted: 'c', mend: 'd' }];
    const { host, asked } = program({ 'GET /api/sessions/a%2Fb': { status: 422, body: { ok: false, faults } } });
    expect(await host.session('a/b')).toEqual({ ok: false, faults });
    expect(asked).toEqual([{ address: '/api/sessions/a%2Fb', method: 'GET', body: null }]);
  });

  test('what is no answer is thrown with its sentence', async () => {
    const { host } = program({ 'GET /api/documents': { status: 401, body: { error: 'open the address again' } } });
    await expect(host.list()).rejects.toThrow('open the address again');
  });

  test('follows a job to its end', async () => {
    const { host, streams, asked } = program({ 'POST /api/jobs': { status: 201, body: { job: '7' } } });
    const progress: PlanProgress[] = [];
    const results: PlanResult[] = [];
    host.startPlan(
      { session: 's' },
      { onProgress: (each) => progress.push(each), onDone: (each) => results.push(each) },
    );
    await settled();
    streams[0]!.tell('progress', { value: 9, bound: 8, share: 0.5 });
    streams[0]!.tell('done', { kind: 'unknown', reason: 'no effort' });
    expect(progress).toEqual([{ value: 9, bound: 8, share: 0.5 }]);
    expect(results).toEqual([{ kind: 'unknown', reason: 'no effort' }]);
    expect(streams[0]!.closed).toBe(true);
    expect(asked[0]).toEqual({ address: '/api/jobs', method: 'POST', body: { session: 's' } });
  });

  test('a stop before the job has a number reaches it none the less', async () => {
    const { host, asked } = program({
      'POST /api/jobs': { status: 201, body: { job: '7' } },
      'POST /api/jobs/7/stop': { status: 204, body: null },
    });
    host.startPlan({ session: 's' }, { onProgress: () => undefined, onDone: () => undefined }).stop();
    await settled();
    expect(asked.map((each) => each.address)).toEqual(['/api/jobs', '/api/jobs/7/stop']);
  });

  test('a request with faults is refused; a busy program says so', async () => {
    const results: PlanResult[] = [];
    const onDone = (each: PlanResult): void => void results.push(each);
    program({ 'POST /api/jobs': { status: 422, body: { ok: false, faults: [] } } }).host.startPlan(
      { session: 's' },
      { onProgress: () => undefined, onDone },
    );
    program({ 'POST /api/jobs': { status: 429, body: { error: 'too many at once' } } }).host.startPlan(
      { session: 's' },
      { onProgress: () => undefined, onDone },
    );
    await settled();
    expect(results).toEqual([
      { kind: 'refused', faults: [] },
      { kind: 'unknown', reason: 'too many at once' },
    ]);
  });
});

describe('the start code', () => {
  test.each([
    { fragment: '#code=abc', code: 'abc' },
    { fragment: '#code=a%2Bb&x=1', code: 'a+b' },
    { fragment: '', code: null },
  ])('of "$fragment" is $code', ({ fragment, code }) => {
    expect(codeIn(fragment)).toBe(code);
  });

  test('leaves the address before anything is asked', async () => {
    const order: string[] = [];
    const { ask, asked } = program({ 'POST /api/pair': { status: 204, body: null } });
    const noted = ((address: string, init?: RequestInit) => {
      order.push('asked');
      return ask(address, init);
    }) as typeof fetch;
    const at = { hash: '#code=abc', pathname: '/', search: '?x' };
    const paired = await pair(at, (address) => order.push(`now at ${address}`), noted);
    expect(paired.ok).toBe(true);
    expect(order).toEqual(['now at /?x', 'asked']);
    expect(asked[0]!.body).toEqual({ code: 'abc' });
  });

  test('that was used is refused in words', async () => {
    const { ask } = program({ 'POST /api/pair': { status: 403, body: { error: 'the code was used' } } });
    const at = { hash: '#code=abc', pathname: '/', search: '' };
    expect(await pair(at, () => undefined, ask)).toEqual({ ok: false, words: 'the code was used' });
  });
});

test('a desktop window brings its own host; a browser does not', () => {
  const host = standInHost();
  expect(desktopHost({ afterheat: host })).toBe(host);
  expect(desktopHost({})).toBeNull();
});
