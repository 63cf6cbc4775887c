/** The conflict-learning engine as one call: tier after tier to the proof, or as far as the effort goes. */
import { validateProblem } from '../validate-problem.ts';
import { builtLearner } from './learner.ts';
import type { Learner } from './learner.ts';
import { explainClash } from './clash.ts';
import type { Outcome, Solve, SolveOptions, TraceRow } from '../outcome.ts';
import type { Problem } from '../problem.ts';

/** Conflicts between looks at the effort and the caller. */
const SLICE = 2000;
/** Share of the effort left that a tier may take before the next one gets its turn. */
const TIER_SHARE = 0.6;

/**
 * Solves a problem by learning from conflicts alone.
 *
 * @param problem see `problem.ts`; faults throw `ProblemFault`
 * @param options effort in the core's work units: entries propagated, watches and arcs visited, propagator runs by cost, 50 a conflict
 * @returns proven, bounded, impossible with a clash in the asker's requirements, or unknown
 */
export const solveByLearning: Solve = (problem, options) => {
  validateProblem(problem);
  const learner = builtLearner(problem, options);
  if (options.start !== undefined) learner.offer(options.start);
  const trace: TraceRow[] = [];
  report(learner, options, trace);
  let stopped = false;
  let ground = learner.work;
  for (;;) {
    const left = options.effort - learner.work;
    if (left <= 0 || learner.model.tooLarge) stopped = !learner.done;
    if (stopped || learner.done || learner.impossible) break;
    const last = learner.tier + 1 >= problem.tiers.length;
    const share = last || learner.best === null ? left : ground + TIER_SHARE * (options.effort - ground) - learner.work;
    const step = learner.improve({
      conflicts: SLICE,
      work: Math.max(1, Math.min(left, share)),
      ...(options.shouldStop === undefined ? {} : { shouldStop: options.shouldStop }),
    });
    if (step === 'stopped') stopped = true;
    if (step === 'closed') ground = learner.work;
    if (
      step === 'spent' &&
      !last &&
      learner.best !== null &&
      learner.work >= ground + TIER_SHARE * (options.effort - ground)
    ) {
      learner.pass();
      ground = learner.work;
    }
    report(learner, options, trace);
  }
  return outcome(problem, learner, options, trace, stopped);
};

function outcome(
  problem: Problem,
  learner: Learner,
  options: SolveOptions,
  trace: readonly TraceRow[],
  stopped: boolean,
): Outcome {
  const common = { stopped, work: learner.work, trace };
  if (learner.impossible) {
    const clash = explainClash(problem, Math.max(0, options.effort - learner.work), options.shouldStop);
    return { kind: 'impossible', ...common, clash };
  }
  if (learner.best === null) return { kind: 'unknown', ...common };
  const tiers = learner.outcomes();
  const proven = tiers.every((tier) => tier.proven);
  return { kind: proven ? 'proven' : 'bounded', ...common, stopped: stopped || !proven, solution: learner.best, tiers };
}

function report(learner: Learner, options: SolveOptions, trace: TraceRow[]): void {
  const value = learner.values[0] ?? null;
  const bound = learner.bounds[0] ?? 0;
  const before = trace[trace.length - 1];
  if (before !== undefined && before.value === value && before.bound === bound) return;
  const row = { work: learner.work, value, bound: value === null ? bound : Math.min(bound, value) };
  trace.push(row);
  options.onProgress?.(row, learner.best);
}
