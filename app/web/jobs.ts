/** Jobs of the web host: started by one request, followed by another, perhaps again after a reload. */
import { randomUUID } from 'node:crypto';
import type { HelpProgress, HelpResult, Host, PlanProgress, PlanRequest, PlanResult } from '../api.ts';

/** What a follower is told; of one job it is always of one kind. */
export interface Follower {
  readonly onProgress: (progress: PlanProgress | HelpProgress) => void;
  readonly onDone: (result: PlanResult | HelpResult) => void;
}

export interface Jobs {
  /** Starts a plan; null: too many jobs are under way. */
  readonly start: (request: PlanRequest) => string | null;
  /** Starts the question what would help; null: too many jobs are under way. */
  readonly startHelp: (request: PlanRequest) => string | null;
  readonly has: (job: string) => boolean;
  /** Tells the last progress and the result at once where they are there already. @returns how to cease; null: no such job */
  readonly follow: (job: string, events: Follower) => (() => void) | null;
  /** @returns false: no such job */
  readonly stop: (job: string) => boolean;
}

export interface JobLimits {
  /** Jobs under way at once. */
  readonly active: number;
  /** Results kept for who asks again. */
  readonly kept: number;
  /** A job that nobody follows for so long is stopped, ms. */
  readonly aloneMs: number;
}
const LIMITS: JobLimits = { active: 8, kept: 20, aloneMs: 15_000 };

interface Job {
  progress: PlanProgress | HelpProgress | null;
  result: PlanResult | HelpResult | null;
  readonly followers: Set<Follower>;
  stop: () => void;
  alone: NodeJS.Timeout | null;
}

/** The jobs of a host. */
export function createJobs(host: Pick<Host, 'startPlan' | 'startHelp'>, limits: JobLimits = LIMITS): Jobs {
  const jobs = new Map<string, Job>();

  const watchAlone = (job: Job): void => {
    if (job.alone !== null) clearTimeout(job.alone);
    job.alone = null;
    if (job.result !== null || job.followers.size > 0) return;
    job.alone = setTimeout(() => job.stop(), limits.aloneMs);
    job.alone.unref();
  };
  const forgetOld = (): void => {
    const done = [...jobs].filter(([, job]) => job.result !== null);
    for (const [id] of done.slice(0, Math.max(0, done.length - limits.kept))) jobs.delete(id);
  };

  const begin = (start: (events: Follower) => { readonly stop: () => void }): string | null => {
    if ([...jobs.values()].filter(({ result }) => result === null).length >= limits.active) return null;
    const id = randomUUID();
    const job: Job = { progress: null, result: null, followers: new Set(), stop: () => {}, alone: null };
    jobs.set(id, job);
    job.stop = start({
      onProgress: (progress) => {
        job.progress = withLastPlan(progress, job.progress);
        for (const follower of [...job.followers]) follower.onProgress(progress);
      },
      onDone: (result) => {
        job.result = result;
        for (const follower of [...job.followers]) follower.onDone(result);
        job.followers.clear();
        watchAlone(job);
        forgetOld();
      },
    }).stop;
    watchAlone(job);
    return id;
  };

  return {
    start: (request) => begin((events) => host.startPlan(request, events)),
    startHelp: (request) => begin((events) => host.startHelp(request, events)),
    has: (id) => jobs.has(id),
    follow: (id, events) => {
      const job = jobs.get(id);
      if (job === undefined) return null;
      if (job.progress !== null) events.onProgress(job.progress);
      if (job.result !== null) {
        events.onDone(job.result);
        return () => {};
      }
      job.followers.add(events);
      watchAlone(job);
      return () => {
        job.followers.delete(events);
        watchAlone(job);
      };
    },
    stop: (id) => {
      const job = jobs.get(id);
      job?.stop();
      return job !== undefined;
    },
  };
}

/** Progress with the best plan that was told of, so that who follows only now sees it too. */
function withLastPlan(
  progress: PlanProgress | HelpProgress,
  before: PlanProgress | HelpProgress | null,
): PlanProgress | HelpProgress {
  if ('report' in progress || progress.plan !== undefined) return progress;
  const plan = before === null || 'report' in before ? undefined : before.plan;
  return plan === undefined ? progress : { ...progress, plan };
}
