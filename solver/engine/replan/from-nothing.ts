/** Ways to go on where no few moves lead anywhere: by the whole engine, on what is left of the effort. Both may prove that there is none. */
import { RULED_OUT } from '../exhausted.ts';
import { LEARNER_UNITS, Learner, SLICE } from '../learning/learner.ts';
import type { Clash, Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { solveTogether } from '../together.ts';
import type { ReplanAsked } from './asked.ts';
import { buildCost } from './build-cost.ts';
import { condition, tasksLeft } from './condition.ts';
import { exactProblem } from './exact.ts';

/** Work of the learner's slices, its own units, and slices without gain after which it ends. */
const SLICE_WORK = 60_000;
const PATIENCE = 8;

export interface FromNothing {
  /** Of the problem given; null: none was found. */
  readonly solution: Solution | null;
  /** Why there is no way to go on; null where there may be one. */
  readonly clash: Clash | null;
  readonly stopped: boolean;
  /** Work units, those of the ensemble. */
  readonly work: number;
}

/**
 * The learner on the whole question.
 *
 * @param problem settled, perhaps with limits let go
 * @param decided by choice: the option that facts decide, or null
 * @param bound no way to go on finishes earlier
 * @param effort most work units, those of the building among them; too few for that: nothing is tried
 */
export function byLearner(
  asked: ReplanAsked,
  problem: Problem,
  decided: readonly (number | null)[],
  bound: number,
  effort: number,
): FromNothing {
  const cost = buildCost(tasksLeft(problem, decided));
  if (cost >= effort) return { solution: null, clash: null, stopped: true, work: 0 };
  const exact = exactProblem(asked, problem, bound, problem.horizon);
  const small = condition(exact.problem, [...decided, ...asked.units.map(() => null)]);
  const learner = new Learner(small.problem, asked.seed);
  let misses = 0;
  let stopped = false;
  while (!learner.done && !learner.impossible && !learner.model.tooLarge && misses < PATIENCE) {
    const left = effort - cost - Math.floor(learner.work / LEARNER_UNITS);
    if (left <= 0) break;
    const step = learner.improve({
      conflicts: SLICE,
      work: Math.min(left * LEARNER_UNITS, SLICE_WORK),
      ...(asked.shouldStop === undefined ? {} : { shouldStop: asked.shouldStop }),
    });
    stopped = step === 'stopped';
    if (stopped) break;
    misses = step === 'spent' ? misses + 1 : 0;
  }
  return {
    solution: learner.best === null ? null : exact.restrict(small.widen(learner.best)),
    clash: learner.impossible && learner.best === null ? RULED_OUT : null,
    stopped,
    work: cost + Math.floor(learner.work / LEARNER_UNITS),
  };
}

/** Both engines on the earliest finish alone. */
export function byBoth(
  asked: ReplanAsked,
  problem: Problem,
  decided: readonly (number | null)[],
  effort: number,
): FromNothing {
  const small = condition(problem, decided);
  const finish = new Set(asked.finish.map((node) => problem.tasks[(node - 1) >> 1]!.id));
  const terms = small.problem.tasks.flatMap(({ id }) =>
    finish.has(id) ? [{ point: { task: id, at: 'end' } as const }] : [],
  );
  const outcome = solveTogether(
    { ...small.problem, tiers: [{ kind: 'latest', id: 'finish', terms }] },
    {
      seed: asked.seed,
      effort,
      ...(asked.shouldStop === undefined ? {} : { shouldStop: asked.shouldStop }),
    },
  );
  const { work, stopped } = outcome;
  switch (outcome.kind) {
    case 'impossible':
      return { solution: null, clash: outcome.clash, stopped: false, work };
    case 'unknown':
      return { solution: null, clash: null, stopped, work };
    case 'proven':
    case 'bounded':
      return { solution: small.widen(outcome.solution), clash: null, stopped, work };
  }
}
