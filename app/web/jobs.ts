/** Planning jobs of the web host: started by one request, followed by another, perhaps again after a reload. */
import { randomUUID } from 'node:crypto';
import type { Host, JobEvents, PlanProgress, PlanRequest, PlanResult } from '../api.ts';

export interface Jobs {
  /** Starts a job; null: too many are under way. */
  readonly start: (request: PlanRequest) => string | null;
  readonly has: (job: string) => boolean;
  /** Tells the last progress and the result at once where they are there already. @returns how to cease; null: no such job */
  readonly follow: (job: string, events: JobEvents) => (() => void) | null;
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
  progress: PlanProgress | null;
  result: PlanResult | null;
  readonly followers: Set<JobEvents>;
  stop: () => void;
  alone: NodeJS.Timeout | null;
}

/** The jobs of a host. */
export function createJobs(host: Pick<Host, 'startPlan'>, limits: JobLimits = LIMITS): Jobs {
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

  return {
    start: (request) => {
      if ([...jobs.values()].filter(({ result }) => result === null).length >= limits.active) return null;
      const id = randomUUID();
      const job: Job = { progress: null, result: null, followers: new Set(), stop: () => {}, alone: null };
      jobs.set(id, job);
      job.stop = host.startPlan(request, {
        onProgress: (progress) => {
          job.progress = progress;
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
    },
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
