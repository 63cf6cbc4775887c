/** A way to go on with its times moved near the old ones: the same choices and orders, worth no more. */
import type { Budget } from '../budget.ts';
import { withTimes } from '../explain/plan-order.ts';
import type { Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { verifySolution } from '../verify-solution.ts';
import { ArcTable } from './arc-table.ts';
import type { ReplanAsked, Worth } from './asked.ts';
import { boundsByFacts, carryOn } from './carry-on.ts';
import { READ_STEPS, VERIFY_STEPS, type Going } from './improve.ts';
import { keptOrder } from './kept-order.ts';

/**
 * @param problem settled, perhaps with limits let go
 * @param solution of it
 * @returns the solution itself where moving it would break something or be worth more
 */
export function closer(
  asked: ReplanAsked,
  problem: Problem,
  solution: Solution,
  worth: (solution: Solution) => Worth,
  budget: Budget,
): Going {
  const order = keptOrder(problem, solution, asked.facts);
  const lower = boundsByFacts(asked, (task) => solution.tasks[task] !== null);
  const carried = carryOn(asked, ArcTable.of(order.arcs).along(order.sequences), lower);
  budget.spend(order.arcs.length * READ_STEPS + carried.steps);
  const plain = { solution, worth: worth(solution) };
  if (carried.kind === 'cycle') return plain;
  const near = withTimes(solution, carried.times);
  const nearWorth = worth(near);
  if (nearWorth.total > plain.worth.total) return plain;
  budget.spend(VERIFY_STEPS);
  return verifySolution(problem, near).length === 0 ? { solution: near, worth: nearWorth } : plain;
}
