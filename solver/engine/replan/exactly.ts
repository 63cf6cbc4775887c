/** The learner on the whole question, from a way to go on: it can better it, and prove it best. */
import { STEPS, type Budget } from '../budget.ts';
import { byNumber, startNode } from '../explain/by-number.ts';
import { LEARNER_UNITS, Learner, SLICE } from '../learning/learner.ts';
import type { Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { OPEN, type ReplanAsked } from './asked.ts';
import { buildCost } from './build-cost.ts';
import { condition, tasksLeft } from './condition.ts';
import { exactProblem } from './exact.ts';
import type { Going } from './improve.ts';

export interface Exactly {
  /** The best that the learner found, the start where that is. */
  readonly solution: Solution;
  /** Whether nothing is worth less. */
  readonly proven: boolean;
  /** Worth beyond `least` that no way to go on is below. */
  readonly bound: number;
  readonly stopped: boolean;
}

/**
 * @param problem settled, what surely breaks let go
 * @param decided by choice: the option that facts decide, or null
 * @param still tasks that are left as the start has them
 * @param least no way to go on finishes earlier
 * @param budget of the whole replan
 * @returns null where the budget is too little to build the learner's model, or the model does not have the start
 */
export function exactly(
  asked: ReplanAsked,
  problem: Problem,
  decided: readonly (number | null)[],
  start: Going,
  still: (task: number) => boolean,
  least: number,
  budget: Budget,
): Exactly | null {
  if (budget.over()) return null;
  const options = [...decided];
  const position = byNumber(problem).choices;
  const frozen = problem.tasks.flatMap((task, index) => {
    const at = start.solution.tasks[index] ?? null;
    if (at === null || asked.facts[startNode(index)] !== OPEN || !still(index)) return [];
    if (task.choice !== undefined) {
      const choice = position.get(task.choice)!;
      options[choice] = start.solution.choices[choice]!;
    }
    return [{ task: task.id, at: at.start }];
  });
  // What the question adds takes no resource.
  const cost = buildCost(tasksLeft(problem, options));
  if (cost > budget.left) return null;
  const exact = exactProblem(asked, problem, least, start.worth.total);
  const small = condition(
    {
      ...exact.problem,
      lags: [
        ...exact.problem.lags,
        ...frozen.flatMap(({ task, at }) => [
          { from: 'origin', to: { task, at: 'start' }, least: at } as const,
          { from: { task, at: 'start' }, to: 'origin', least: -at } as const,
        ]),
      ],
    },
    [...options, ...asked.units.map(() => null)],
  );
  budget.spend(cost * STEPS);
  const learner = new Learner(small.problem, asked.seed);
  if (!learner.offer(small.narrow(exact.extend(start.solution, start.worth.finish, start.worth.changed)))) return null;
  let spent = 0;
  let stopped = false;
  while (!learner.done && !learner.model.tooLarge && budget.left > 0) {
    const step = learner.improve({
      conflicts: SLICE,
      work: budget.left * LEARNER_UNITS,
      ...(asked.shouldStop === undefined ? {} : { shouldStop: asked.shouldStop }),
    });
    const units = Math.floor(learner.work / LEARNER_UNITS);
    budget.spend((units - spent) * STEPS);
    spent = units;
    if (step === 'stopped' || asked.shouldStop?.() === true) {
      stopped = true;
      break;
    }
  }
  return {
    solution: exact.restrict(small.widen(learner.best!)),
    proven: learner.done,
    bound: learner.bounds[0] ?? 0,
    stopped,
  };
}
