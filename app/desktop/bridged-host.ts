/** The `Host` as the page has it: each request becomes a message to the main process. Used by the preload script. */
import type { IpcRenderer } from 'electron';
import type { Host, JobEvents } from '../api.ts';
import { CHANNEL, type Call, type JobMessage } from './bridge.ts';

/** A host over the window's end of the channels. */
export function bridgedHost(ipc: Pick<IpcRenderer, 'invoke' | 'send' | 'on'>): Host {
  const jobs = new Map<number, JobEvents>();
  let last = 0;
  // The main process answers each call with the type that `Host` gives it.
  const ask = <T>(call: Call, ...args: readonly unknown[]): Promise<T> =>
    ipc.invoke(CHANNEL.call, { call, args }) as Promise<T>;

  ipc.on(CHANNEL.job, (_event, message: JobMessage) => {
    const events = jobs.get(message.job);
    if (message.kind === 'progress') return events?.onProgress(message.progress);
    jobs.delete(message.job);
    events?.onDone(message.result);
  });

  return {
    list: () => ask('list'),
    session: (id) => ask('session', id),
    kitchen: (id) => ask('kitchen', id),
    plan: (id) => ask('plan', id),
    savePlan: (plan) => ask('savePlan', plan),
    startPlan: (request, events) => {
      last += 1;
      const job = last;
      jobs.set(job, events);
      ipc.send(CHANNEL.start, { job, request });
      return { stop: () => ipc.send(CHANNEL.stop, { job }) };
    },
  };
}
