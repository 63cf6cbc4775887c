/** Whether a problem has a better plan than one at hand, by its first tier: the ensemble looks for one, the learner looks on and proves. */
import { LEARNER_UNITS, Learner, SLICE } from '../engine/learning/learner.ts';
import type { Solution } from '../engine/outcome.ts';
import type { Problem } from '../engine/problem.ts';
import { solve as solveByEnsemble } from '../engine/solve.ts';

/** Share of the effort that the ensemble gets, and its least. */
const ENSEMBLE_SHARE = 0.15;
const ENSEMBLE_LEAST = 10_000;

/** Work units that a learner takes before it begins: pairs of tasks are looked at. */
export const setUpWork = (problem: Problem): number => 2 * problem.tasks.length ** 2;

export interface ShorterOptions {
  readonly seed: number;
  /** Most work units of search, in those of the ensemble. */
  readonly effort: number;
  readonly shouldStop?: () => boolean;
  /** The first plan that is better than the one at hand is enough. */
  readonly anyBetter?: boolean;
}

export interface Shorter {
  /** The best plan known now; null: none was at hand and none was found. */
  readonly solution: Solution | null;
  /** Its first tier; Infinity without a plan. */
  readonly value: number;
  /** No plan is better than this. */
  readonly bound: number;
  /** Work units, set-up among them. */
  readonly work: number;
}

/**
 * Looks for a better plan in the effort given.
 *
 * @param problem whose first tier counts; it is the only one looked at
 * @param start a plan of it, if there is one
 */
export function shorter(
  problem: Problem,
  start: Solution | null,
  { seed, effort, shouldStop, anyBetter = false }: ShorterOptions,
): Shorter {
  const asked: Problem = { ...problem, tiers: problem.tiers.slice(0, 1) };
  const stop = (): boolean => shouldStop?.() === true;
  let first: number | null = null;
  let better = false;
  const ensemble = solveByEnsemble(asked, {
    seed,
    effort: Math.max(ENSEMBLE_LEAST, effort * ENSEMBLE_SHARE),
    shouldStop: () => (anyBetter && better) || stop(),
    onProgress: ({ value }) => {
      // The first that is told is the plan at hand.
      if (value !== null) first ??= value;
      better = start !== null && first !== null && value !== null && value < first;
    },
    ...(start === null ? {} : { start }),
  });
  const found = 'solution' in ensemble ? ensemble : null;
  const value = found?.tiers[0]?.value ?? Infinity;
  const bound = found?.tiers[0]?.bound ?? 0;
  const settled = bound === value || (anyBetter && better);
  if (settled || stop() || ensemble.work >= effort)
    return { solution: found?.solution ?? null, value, bound, work: ensemble.work };

  const learner = new Learner(asked, seed);
  if (found !== null) learner.offer(found.solution);
  const spent = (): number => ensemble.work + Math.ceil(learner.work / LEARNER_UNITS);
  while (!learner.done && !learner.impossible && !learner.model.tooLarge && spent() < effort && !stop()) {
    const work = Math.max(1, (effort - spent()) * LEARNER_UNITS);
    learner.improve({ conflicts: SLICE, work, ...(shouldStop === undefined ? {} : { shouldStop }) });
    if (anyBetter && learner.best !== null && learner.values[0]! < value) break;
  }
  return {
    solution: learner.best ?? found?.solution ?? null,
    value: learner.values[0] ?? value,
    bound: Math.max(bound, Math.min(learner.bounds[0] ?? 0, learner.values[0] ?? Infinity)),
    work: spent() + setUpWork(asked),
  };
}
