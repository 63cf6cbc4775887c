/** The host over HTTP, for a browser that was let in with the start code. */
import type { Answer, DocumentEntry, Fault, Host, PlanRequest } from '../../app/api.ts';
import type { PlanFigures } from '../../solver/answers/plan-figures.ts';
import type { KitchenFigures } from '../../solver/answers/kitchen-figures.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { Plan } from '../../solver/kitchen/plan.ts';
import type { Session } from '../../solver/kitchen/session.ts';
import { refusalWords } from './pairing.ts';

/** As much of `EventSource` as is used. */
export interface EventStream {
  addEventListener: (kind: string, heard: (event: MessageEvent<string>) => void) => void;
  onerror: ((event: Event) => void) | null;
  readonly readyState: number;
  close: () => void;
}

/** `EventSource.CLOSED`: the browser has given up on the stream. */
const CLOSED = 2;

export interface WebParts {
  readonly ask: typeof fetch;
  readonly listen: (address: string) => EventStream;
}

const post = (body: unknown): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
  credentials: 'same-origin',
});

/** An answer with faults (422) is an answer; whatever else is not good is thrown with the host's own sentence. */
async function answer<T>(asked: Promise<Response>): Promise<T> {
  const response = await asked;
  if (response.ok || response.status === 422) return (await response.json()) as T;
  throw new Error(await refusalWords(response));
}

/** Results that every kind of job can have. */
type NoAnswer =
  | { readonly kind: 'unknown'; readonly reason: string }
  | { readonly kind: 'refused'; readonly faults: readonly Fault[] };
const unknown = (reason: string): NoAnswer => ({ kind: 'unknown', reason });

interface Events<P, R> {
  readonly onProgress: (progress: P) => void;
  readonly onDone: (result: R | NoAnswer) => void;
}

/** @throws (as a rejected promise) where the program is gone or does not know this browser */
export function webHost({ ask, listen }: WebParts): Host {
  const get = <T>(address: string): Promise<T> => answer<T>(ask(address, { credentials: 'same-origin' }));
  const one = (kind: string, id: string): string => `/api/${kind}/${encodeURIComponent(id)}`;

  function follow<P, R>(job: string, events: Events<P, R>, onEnd: () => void): EventStream {
    const stream = listen(`${one('jobs', job)}/events`);
    const end = (result: R | NoAnswer): void => {
      stream.close();
      onEnd();
      events.onDone(result);
    };
    stream.addEventListener('progress', ({ data }) => events.onProgress(JSON.parse(data) as P));
    stream.addEventListener('done', ({ data }) => end(JSON.parse(data) as R));
    // The browser asks again by itself; the stream then tells the last of each once more.
    stream.onerror = () => {
      if (stream.readyState === CLOSED) end(unknown('the program cannot be reached any more'));
    };
    return stream;
  }

  function start<P, R>(route: string, request: PlanRequest, events: Events<P, R>): { readonly stop: () => void } {
    let job: string | null = null;
    let stopped = false;
    let ended = false;
    const stopJob = (): void => {
      if (job !== null && !ended) void ask(`${one('jobs', job)}/stop`, post({})).catch(() => undefined);
    };
    const begin = async (): Promise<void> => {
      const response = await ask(route, post(request));
      if (response.status === 422) {
        const refused = (await response.json()) as Answer<never>;
        events.onDone({ kind: 'refused', faults: refused.ok ? [] : refused.faults });
        return;
      }
      if (!response.ok) {
        events.onDone(unknown(await refusalWords(response)));
        return;
      }
      job = ((await response.json()) as { readonly job: string }).job;
      follow(job, events, () => (ended = true));
      if (stopped) stopJob();
    };
    begin().catch((error: unknown) => events.onDone(unknown(error instanceof Error ? error.message : String(error))));
    return {
      stop: () => {
        stopped = true;
        stopJob();
      },
    };
  }

  return {
    list: () => get<readonly DocumentEntry[]>('/api/documents'),
    session: (id) => get<Answer<Session>>(one('sessions', id)),
    kitchen: (id) => get<Answer<Kitchen>>(one('kitchens', id)),
    plan: (id) => get<Answer<Plan>>(one('plans', id)),
    savePlan: (plan) => answer<Answer<DocumentEntry>>(ask('/api/plans', post(plan))),
    saveKitchen: (kitchen) => answer<Answer<DocumentEntry>>(ask('/api/kitchens', post(kitchen))),
    kitchenFigures: (kitchen) => answer<Answer<KitchenFigures>>(ask('/api/kitchen-figures', post(kitchen))),
    planFigures: (plan) => answer<Answer<PlanFigures>>(ask('/api/plan-figures', post(plan))),
    startPlan: (request, events) => start('/api/jobs', request, events),
    startHelp: (request, events) => start('/api/helps', request, events),
  };
}
