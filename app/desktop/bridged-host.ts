/** The `Host` as the page has it: each request becomes a message to the main process. Used by the preload script. */
import type { IpcRenderer } from 'electron';
import type { Host, PlanRequest } from '../api.ts';
import { CHANNEL, type Call, type JobMessage } from './bridge.ts';

/** Those of the question asked; the main process answers a job with what its question has for an answer. */
interface Events {
  readonly onProgress: (progress: never) => void;
  readonly onDone: (result: never) => void;
}

/** A host over the window's end of the channels. */
export function bridgedHost(ipc: Pick<IpcRenderer, 'invoke' | 'send' | 'on'>): Host {
  const jobs = new Map<number, Events>();
  let last = 0;
  // The main process answers each call with the type that `Host` gives it.
  const ask = <T>(call: Call, ...args: readonly unknown[]): Promise<T> =>
    ipc.invoke(CHANNEL.call, { call, args }) as Promise<T>;

  ipc.on(CHANNEL.job, (_event, message: JobMessage) => {
    const events = jobs.get(message.job);
    if (message.kind === 'progress') return events?.onProgress(message.progress as never);
    jobs.delete(message.job);
    events?.onDone(message.result as never);
  });

  const start = (question: 'plan' | 'help', request: PlanRequest, events: Events): { readonly stop: () => void } => {
    last += 1;
    const job = last;
    jobs.set(job, events);
    ipc.send(CHANNEL.start, { job, ask: question, request });
    return { stop: () => ipc.send(CHANNEL.stop, { job }) };
  };

  return {
    list: () => ask('list'),
    session: (id) => ask('session', id),
    kitchen: (id) => ask('kitchen', id),
    plan: (id) => ask('plan', id),
    savePlan: (plan) => ask('savePlan', plan),
    saveKitchen: (kitchen) => ask('saveKitchen', kitchen),
    kitchenFigures: (kitchen) => ask('kitchenFigures', kitchen),
    planFigures: (plan) => ask('planFigures', plan),
    startPlan: (request, events) => start('plan', request, events),
    startHelp: (request, events) => start('help', request, events),
  };
}
