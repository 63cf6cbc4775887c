/**
 * The units around what stands in the way of the old order, in widening rings: the nearer ones are let go first, all others keep
 * who does them, where, and in which order, so that the question stays small and its answer changes little (as neighbourhoods
 * of a schedule in time and by resource: Godard, Laborie, Nuijten 2005, "Randomized large neighborhood search for cumulative
 * scheduling").
 */
import type { OrderArc } from '../explain/plan-order.ts';
import { endNode, startNode } from '../explain/taken.ts';
import { OPEN, type ReplanAsked } from './asked.ts';
import { neighbourPairs, unitOfTask } from './changed-units.ts';

/** Minutes on both sides of a ring's tasks in which the next ring's lie, ring by ring; the last ring is all that lies ahead. */
const REACH = [0, 10];

/** Units of two old neighbours that by the facts have traded places. */
function tradedAlready({ problem, old, units, facts }: ReplanAsked, unitOf: Int32Array): readonly number[] {
  return neighbourPairs(problem, old, units).flatMap(({ first, second }) => {
    const [ended, began] = [facts[endNode(first)]!, facts[startNode(second)]!];
    const traded = began !== OPEN && (ended === OPEN || ended > began);
    return traded ? [unitOf[first]!, unitOf[second]!] : [];
  });
}

/**
 * @param cycle arcs that stand against each other in the old order
 * @returns sets of positions of units, each within the next; the last has every unit that is not wholly past
 */
export function nearbyUnits(asked: ReplanAsked, cycle: readonly OrderArc[]): readonly ReadonlySet<number>[] {
  const { problem, old, units, facts } = asked;
  const unitOf = unitOfTask(problem, units);
  const traded = tradedAlready(asked, unitOf);
  const resources = problem.tasks.map(
    ({ modes }) => new Set(modes.flatMap((mode) => (mode?.uses ?? []).map(({ resource }) => resource))),
  );
  const open = (task: number): boolean => facts[startNode(task)] === OPEN && (old.tasks[task] ?? null) !== null;
  let tasks = [...new Set(cycle.flatMap(({ from, to }) => [from, to]))]
    .filter((node) => node > 0)
    .map((node) => (node - 1) >> 1);
  const rings: ReadonlySet<number>[] = [];
  for (const reach of REACH) {
    const near = problem.tasks.flatMap((_, task) => {
      const at = old.tasks[task] ?? null;
      if (!open(task) || at === null) return [];
      const meets = tasks.some((other) => {
        const beside = old.tasks[other] ?? null;
        return (
          beside !== null &&
          at.start <= beside.end + reach &&
          beside.start <= at.end + reach &&
          [...resources[task]!].some((resource) => resources[other]!.has(resource))
        );
      });
      return meets ? [task] : [];
    });
    tasks = [...new Set([...tasks, ...near])];
    rings.push(new Set([...tasks.map((task) => unitOf[task]!), ...traded].filter((unit) => unit >= 0)));
  }
  const ahead = units.flatMap((unit, index) =>
    unit.tasks.some((task) => facts[endNode(task)] === OPEN) ? [index] : [],
  );
  return [...rings, new Set([...ahead, ...traded])];
}
