/**
 * Where the old order cannot be carried on: the fewest moves that make it possible again.
 *
 * What stands against each other is a cycle of arcs; every way out takes one of its orders the other way round, or lets one of its
 * tasks go elsewhere. So the moves are taken from the cycle, breadth first over a beam of the least changed ways, until one keeps
 * every rule (conflict-directed repair, as in Minton, Johnston, Philips, Laird 1992, "Minimizing conflicts", on orders instead of
 * values).
 */
import type { Budget } from '../budget.ts';
import { withTimes, type OrderArc } from '../explain/plan-order.ts';
import type { Solution } from '../outcome.ts';
import { verifySolution } from '../verify-solution.ts';
import type { ReplanAsked, Worth } from './asked.ts';
import { carryOn } from './carry-on.ts';
import { arcsFrom, presence, VERIFY_STEPS, type Going } from './improve.ts';
import type { KeptOrder } from './kept-order.ts';
import { moves, type Way } from './moves.ts';
import type { Problem } from '../problem.ts';
import { timesOf } from './worth.ts';

/** Most moves one after another, ways kept at each depth, and ways looked at in all. */
const DEPTH = 8;
const BEAM = 4;
const WAYS = 600;

interface Node {
  readonly way: Way;
  readonly cycle: readonly OrderArc[];
  /** Places in sequences and options that are not the old ones. */
  readonly moved: number;
}

/** How far a way is from another: options that differ, and neighbours that are no longer such. */
function distance(from: Way, to: Way): number {
  let count = to.choices.reduce((sum, option, choice) => sum + Number(option !== from.choices[choice]), 0);
  for (const [resource, list] of to.sequences) {
    const before = from.sequences.get(resource) ?? [];
    if (before === list) continue;
    const after = new Map(before.slice(1).map((task, index) => [task, before[index]!]));
    count += list.slice(1).filter((task, index) => after.has(task) && after.get(task) !== list[index]).length;
  }
  return count;
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
  const arcsOf = arcsFrom(problem, old, kept);
  const start: Way = { choices: old.choices, sequences: order.sequences };
  const seen = new Set([nameOf(start)]);
  let frontier: readonly Node[] = [{ way: start, cycle, moved: 0 }];
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
        const carried = carryOn(asked, arcsOf.table(moved), lower);
        budget.spend(carried.steps);
        if (carried.kind === 'cycle') {
          next.push({ way: moved, cycle: carried.arcs, moved: distance(start, moved) });
          continue;
        }
        const solution = withTimes({ choices: moved.choices, tasks: old.tasks }, carried.times);
        budget.spend(VERIFY_STEPS);
        if (verifySolution(problem, solution).length > 0) continue;
        const found = { solution, worth: worth(solution) };
        if (best === null || found.worth.total < best.worth.total) best = found;
      }
    if (best !== null) return best;
    frontier = next.sort((a, b) => a.moved - b.moved || a.cycle.length - b.cycle.length).slice(0, BEAM);
  }
  return null;
}
