/**
 * Where the old order cannot be carried on: the fewest moves that make it possible again.
 *
 * What stands against each other is a cycle of arcs; every way out takes one of its orders the other way round, or lets one of its
 * tasks go elsewhere. So the moves are taken from the cycle, breadth first, until one way keeps every rule (conflict-directed
 * repair, as in Minton, Johnston, Philips, Laird 1992, "Minimizing conflicts", on orders instead of values).
 */
import type { Budget } from '../budget.ts';
import { withTimes, type OrderArc } from '../explain/plan-order.ts';
import type { Solution } from '../outcome.ts';
import { verifySolution } from '../verify-solution.ts';
import type { ReplanAsked, Worth } from './asked.ts';
import { carryOn } from './carry-on.ts';
import { arcsOf, keptFor, presence, VERIFY_STEPS, type Going } from './improve.ts';
import type { KeptOrder } from './kept-order.ts';
import { moves, type Way } from './moves.ts';
import type { Problem } from '../problem.ts';
import { timesOf } from './worth.ts';

/** Most moves one after another, and most ways looked at. */
const DEPTH = 6;
const WAYS = 600;

interface Node {
  readonly way: Way;
  readonly cycle: readonly OrderArc[];
  readonly depth: number;
}

const nameOf = (way: Way): string => JSON.stringify([way.choices, [...way.sequences]]);

/**
 * @param problem settled
 * @returns the best way of the fewest moves; null where none was found
 */
export function repair(
  asked: ReplanAsked,
  problem: Problem,
  order: KeptOrder,
  lower: Int32Array,
  cycle: readonly OrderArc[],
  worth: (solution: Solution) => Worth,
  fixed: (choice: number) => boolean,
  still: (task: number) => boolean,
  budget: Budget,
): Going | null {
  const { old } = asked;
  const times = timesOf(old);
  const kept = order.arcs.filter(({ why }) => why.kind !== 'length' && why.kind !== 'lag' && why.kind !== 'horizon');
  const present = presence(problem);
  const start: Way = { choices: old.choices, sequences: order.sequences };
  const seen = new Set([nameOf(start)]);
  let frontier: readonly Node[] = [{ way: start, cycle, depth: 0 }];
  let looked = 0;
  for (let depth = 1; depth <= DEPTH && frontier.length > 0; depth++) {
    const next: Node[] = [];
    let best: Going | null = null;
    for (const { way, cycle: arcs } of frontier)
      for (const moved of moves({ problem, way, times, still, fixed, present }, arcs)) {
        if (looked++ >= WAYS || budget.over()) return best;
        const name = nameOf(moved);
        if (seen.has(name)) continue;
        seen.add(name);
        const carried = carryOn(
          asked,
          arcsOf(problem, moved, old, keptFor(problem, kept, old.choices, moved.choices)),
          lower,
        );
        budget.spend(carried.steps);
        if (carried.kind === 'cycle') {
          next.push({ way: moved, cycle: carried.arcs, depth });
          continue;
        }
        const solution = withTimes({ choices: moved.choices, tasks: old.tasks }, carried.times);
        budget.spend(VERIFY_STEPS);
        if (verifySolution(problem, solution).length > 0) continue;
        const found = { solution, worth: worth(solution) };
        if (best === null || found.worth.total < best.worth.total) best = found;
      }
    if (best !== null) return best;
    frontier = next;
  }
  return null;
}
