/** A session planned for the command line: progress while it lasts, Ctrl-C takes the best so far. */
import type { Host, PlanRequest, PlanResult } from '../api.ts';
import type { Terminal } from './terminal.ts';

/** Solves shorter than this show no progress, ms. */
const QUIET_MS = 600;

/** Plans, and follows it on the standard error; `what` begins each line there. */
export function solve(
  host: Pick<Host, 'startPlan'>,
  request: PlanRequest,
  terminal: Terminal,
  what = 'planning',
): Promise<PlanResult> {
  return new Promise((resolve) => {
    const began = performance.now();
    let deaf = (): void => {};
    const { stop } = host.startPlan(request, {
      onProgress: ({ value, bound, share, tier, tiers }) => {
        if (performance.now() - began < QUIET_MS) return;
        const best = value === null ? 'no plan yet' : `best ${value}`;
        const proving = tier === undefined || tier === tiers?.[0]?.id ? '' : `, proving ${tier}`;
        terminal.progress(
          `${what}: ${best}, bound ${bound}${proving}, ${Math.round(share * 100)} % of the effort; Ctrl-C takes the best so far`,
        );
      },
      onDone: (result) => {
        deaf();
        terminal.progress('');
        resolve(result);
      },
    });
    deaf = terminal.onInterrupt(stop);
  });
}
