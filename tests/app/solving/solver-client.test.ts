import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { HelpResult, PlanProgress, PlanResult } from '../../../app/api.ts';
import type { PlanJob } from '../../../app/solving/job.ts';
import { runHelpJob } from '../../../app/solving/run-help-job.ts';
import { runJob } from '../../../app/solving/run-job.ts';
import { createSolverClient, type SolverClient } from '../../../app/solving/solver-client.ts';
import { builtWorker } from '../../support/built-worker.ts';
import { wallOffsetOf } from '../../../app/solving/wall-offset.ts';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../support/demo-documents.ts';
import { component, on, session as sessionOf, smallKitchen, step } from '../../support/documents.ts';
import { resultOf } from '../../support/solvers.ts';
import { supper } from '../../support/supper.ts';

const peel = component('roots', [step('peel', [on(5)]), step('cut', [on(7)])]);
const small: PlanJob = {
  session: sessionOf([peel]),
  kitchen: smallKitchen(),
  components: [peel],
  seed: 1,
  effort: 100_000,
};
/** More than can be proved while a test waits. */
const long: PlanJob = {
  session: byId(demoSessions(), 'harbour-sunday'),
  kitchen: byId(demoKitchens(), 'harbour-one-oven'),
  components: demoComponents(),
  seed: 1,
  effort: 1e12,
};

let worker: URL;
let client: SolverClient;
beforeAll(async () => {
  worker = await builtWorker();
  client = createSolverClient({ worker, threads: 1 });
});
afterAll(() => client.close());

describe('the solver in its thread', () => {
  test('gives the plan that the solver gives in this thread', async () => {
    const there = await resultOf((events) => client.start(small, events));
    const here = runJob(small, { shouldStop: () => false, onProgress: () => {}, now: () => 0 });
    expect(there.kind === 'planned' && there.plan).toEqual(here.kind === 'planned' && here.plan);
    expect(there.kind).toBe('planned');
  });

  test('a session that cannot be cooked is refused with its faults', async () => {
    const result = await resultOf((events) => client.start({ ...small, crew: 'nobody' }, events));
    expect(result).toMatchObject({ kind: 'refused', faults: [{ path: 'crews', found: 'nobody' }] });
  });

  test('a stop ends a job with its best so far, flagged as stopped', async () => {
    const progress: PlanProgress[] = [];
    const result = await new Promise<PlanResult>((resolve) => {
      const { stop } = client.start(long, {
        onProgress: (row) => {
          progress.push(row);
          if (row.value !== null) stop();
        },
        onDone: resolve,
      });
    });
    const drawn = progress.findLast(({ plan }) => plan !== undefined)?.plan;
    if (drawn === undefined || result.kind !== 'planned') throw new Error(`no plan: ${result.kind}`);
    expect(result.plan.stopped).toBe(true);
    expect(checkPlan(result.plan, { wallOffset: wallOffsetOf(long.session.start) })).toEqual([]);
    expect(result.plan.tiers[0]!.value).toBeLessThanOrEqual(drawn.tiers[0]!.value);
  });

  test('a job that waits its turn can be stopped before it begins', async () => {
    const done: string[] = [];
    const running = client.start(long, { onProgress: () => {}, onDone: () => done.push('first') });
    const waiting = await resultOf((events) => client.start(small, events).stop());
    expect(waiting).toEqual({ kind: 'unknown', reason: 'stopped before a plan was found' });
    const next = resultOf((events) => client.start(small, events));
    running.stop();
    expect((await next).kind).toBe('planned');
    expect(done).toEqual(['first']);
  });
});

describe('what would help, asked of the thread', () => {
  test('is answered as it is in this thread', async () => {
    const there = await new Promise<HelpResult>((resolve) => {
      client.startHelp(small, { onProgress: () => {}, onDone: resolve });
    });
    expect(there).toEqual(runHelpJob(small, { shouldStop: () => false, onProgress: () => {} }));
    expect(there).toMatchObject({ kind: 'answered', report: { finish: 12 } });
  });

  test('is stopped with what is known by then', async () => {
    const result = await new Promise<HelpResult>((resolve) => {
      const { stop } = client.startHelp({ ...long, effort: 5e5 }, { onProgress: () => stop(), onDone: resolve });
    });
    expect(result).toMatchObject({ kind: 'answered', report: { stopped: true } });
  });
});

describe('a thread that fails', () => {
  const failing = (code: string): URL => new URL(`data:text/javascript,${encodeURIComponent(code)}`);

  test('answers its job with the reason, and the next job gets another thread', async () => {
    const code = `import { parentPort } from 'node:worker_threads'; parentPort.on('message', ({ job }) => {
      if (job.seed === 1) throw new Error('out of salt');
      parentPort.postMessage({ kind: 'done', result: { kind: 'unknown', reason: 'well' } });
    });`;
    const fragile = createSolverClient({ worker: failing(code), threads: 1 });
    const first = await resultOf((events) => fragile.start(small, events));
    const second = await resultOf((events) => fragile.start({ ...small, seed: 2 }, events));
    await fragile.close();
    expect(first).toEqual({ kind: 'unknown', reason: 'the solver failed: out of salt' });
    expect(second).toEqual({ kind: 'unknown', reason: 'well' });
  });

  test('that does not obey a stop is ended', async () => {
    const deaf = createSolverClient({
      worker: failing(
        `import { parentPort } from 'node:worker_threads'; parentPort.on('message', () => { for (;;); });`,
      ),
      threads: 1,
      patienceMs: 20,
    });
    const result = await resultOf((events) => deaf.start(small, events).stop());
    // Only a thread that was ended makes room for another once as many are leaving as there may be.
    const after = [1, 2].map(() => resultOf((events) => deaf.start(small, events).stop()));
    expect(result).toEqual({ kind: 'unknown', reason: 'stopped before a plan was found' });
    expect(await Promise.all(after)).toEqual([result, result]);
    await deaf.close();
  });

  test('that is busy with something else is not waited for: the best plan that it told of is the answer to a stop', async () => {
    // Invented: what a search of the supper may tell.
    const finish = { id: 'finish', unit: 'min', value: supper.finishMinutes, bound: 40, proven: false } as const;
    const calm = { id: 'calm', unit: 'changes', value: 9, bound: 0, proven: false } as const;
    const draft = { ...supper, tiers: [finish, calm], status: 'bounded', stopped: true };
    const proven = { ...finish, bound: supper.finishMinutes, proven: true };
    const deaf = createSolverClient({
      worker: failing(
        `import { parentPort } from 'node:worker_threads'; parentPort.on('message', () => {
          const progress = { value: 66, bound: 40, share: 0.5 };
          parentPort.postMessage({ kind: 'progress', progress: { ...progress, plan: ${JSON.stringify(draft)} } });
          parentPort.postMessage({ kind: 'progress', progress: { ...progress, tiers: ${JSON.stringify([proven, { ...calm, bound: 3 }])} } });
          for (;;); });`,
      ),
      threads: 1,
    });
    const told: PlanProgress[] = [];
    const result = await new Promise<PlanResult>((resolve) => {
      const { stop } = deaf.start(small, {
        onProgress: (progress) => told.push(progress) === 2 && stop(),
        onDone: resolve,
      });
    });
    await deaf.close();
    if (result.kind !== 'planned') throw new Error(result.kind);
    expect(told.map(({ plan }) => plan !== undefined)).toEqual([true, false]);
    expect(result.plan).toEqual({
      ...draft,
      tiers: [proven, { ...calm, bound: 3 }],
      boundMinutes: supper.finishMinutes,
    });
  });

  test('is ended by closing the client, which answers what was under way and what comes after', async () => {
    const deaf = createSolverClient({
      worker: failing(`import { parentPort } from 'node:worker_threads'; parentPort.on('message', () => {});`),
      threads: 1,
    });
    const results = [resultOf((events) => deaf.start(small, events)), resultOf((events) => deaf.start(small, events))];
    await deaf.close();
    results.push(resultOf((events) => deaf.start(small, events)));
    expect((await Promise.all(results)).map(({ kind }) => kind)).toEqual(['unknown', 'unknown', 'unknown']);
  });
});
