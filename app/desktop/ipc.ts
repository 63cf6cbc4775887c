/** The `Host` for the window: each call from our own page only, each argument read before it is used. */
import type { IpcMain, IpcMainEvent, IpcMainInvokeEvent } from 'electron';
import * as v from 'valibot';
import type { HelpProgress, HelpResult, Host, PlanProgress, PlanResult } from '../api.ts';
import { readPlanRequest } from '../host/plan-request.ts';
import { CALLS, CHANNEL, type JobMessage } from './bridge.ts';
import { PAGE_ORIGIN } from './window.ts';

const JobNumber = v.pipe(v.number(), v.safeInteger(), v.minValue(1));
const Start = v.strictObject({ job: JobNumber, ask: v.optional(v.picklist(['plan', 'help'])), request: v.unknown() });
const Stop = v.strictObject({ job: JobNumber });
const Asked = v.variant('call', [
  v.strictObject({ call: v.literal('list'), args: v.strictTuple([]) }),
  v.strictObject({
    call: v.picklist(['session', 'kitchen', 'plan']),
    args: v.strictTuple([v.pipe(v.string(), v.maxLength(200))]),
  }),
  v.strictObject({
    call: v.picklist(['savePlan', 'saveKitchen', 'kitchenFigures', 'planFigures']),
    args: v.strictTuple([v.unknown()]),
  }),
]);

/** Jobs of one page under way at once. */
const MOST_JOBS = 8;

/** Whether a message comes from the top frame of our own page. */
function ours({ senderFrame }: Pick<IpcMainEvent | IpcMainInvokeEvent, 'senderFrame'>): boolean {
  if (senderFrame === null || senderFrame.parent !== null) return false;
  return URL.canParse(senderFrame.url) && senderFrame.url.startsWith(`${PAGE_ORIGIN}/`);
}

/** Answers the window's calls with a host. Malformed or foreign ones are refused: asked ones by an error, sent ones by silence. */
export function serveHost(ipc: Pick<IpcMain, 'handle' | 'on'>, host: Host): void {
  const jobs = new Map<string, () => void>();

  ipc.handle(CHANNEL.call, async (event, given: unknown) => {
    if (!ours(event)) throw new Error('refused: not our page');
    const read = v.safeParse(Asked, given);
    if (!read.success) throw new Error(`refused: a call is one of ${CALLS.join(', ')} with its arguments`);
    const asked = read.output;
    switch (asked.call) {
      case 'list':
        return host.list();
      case 'session':
      case 'kitchen':
      case 'plan':
        return host[asked.call](asked.args[0]);
      case 'savePlan':
      case 'saveKitchen':
      case 'kitchenFigures':
      case 'planFigures':
        // Each reads it as any document from outside.
        return host[asked.call](asked.args[0] as never);
    }
  });

  ipc.on(CHANNEL.start, (event, given: unknown) => {
    if (!ours(event)) return;
    const read = v.safeParse(Start, given);
    if (!read.success) return;
    const { job, ask } = read.output;
    const { sender } = event;
    const key = `${sender.id}/${job}`;
    const tell = (message: JobMessage): void => {
      if (!sender.isDestroyed()) sender.send(CHANNEL.job, message);
    };
    const done = (result: PlanResult | HelpResult): void => {
      jobs.delete(key);
      tell({ kind: 'done', job, result });
    };
    const request = readPlanRequest(read.output.request);
    if (!request.ok) return done({ kind: 'refused', faults: request.faults });
    if (jobs.has(key)) return;
    if ([...jobs.keys()].filter((other) => other.startsWith(`${sender.id}/`)).length >= MOST_JOBS)
      return tell({ kind: 'done', job, result: { kind: 'unknown', reason: 'too many plans are being made' } });
    jobs.set(key, () => {});
    const events = {
      onProgress: (progress: PlanProgress | HelpProgress) => tell({ kind: 'progress', job, progress }),
      onDone: done,
    };
    const { stop } = ask === 'help' ? host.startHelp(request.value, events) : host.startPlan(request.value, events);
    if (jobs.has(key)) jobs.set(key, stop);
    sender.once('destroyed', stop);
  });

  ipc.on(CHANNEL.stop, (event, given: unknown) => {
    if (!ours(event)) return;
    const read = v.safeParse(Stop, given);
    if (read.success) jobs.get(`${event.sender.id}/${read.output.job}`)?.();
  });
}
