/**
 * The order of a running plan, held against the facts: arcs of the old plan that can still be kept, and for each exclusive
 * resource the sequence of its tasks, what has begun before what has not.
 */
import { planOrder, type OrderArc } from '../explain/plan-order.ts';
import { endNode, startNode } from '../explain/taken.ts';
import type { Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { OPEN } from './asked.ts';
import { sequences } from './changed-units.ts';

export interface KeptOrder {
  readonly nodes: number;
  /** Lengths, lags, and the orders that are not by exclusive resources; by the expected times of `from`, then `to`. */
  readonly arcs: readonly OrderArc[];
  /** By exclusive resource: positions of its tasks, first to last. */
  readonly sequences: ReadonlyMap<string, readonly number[]>;
}

/** Arcs between one task and the next along the sequences. */
export const sequenceArcs = (lists: ReadonlyMap<string, readonly number[]>): OrderArc[] =>
  [...lists].flatMap(([resource, list]) =>
    list.slice(1).map((task, index): OrderArc => ({
      from: endNode(list[index]!),
      to: startNode(task),
      least: 0,
      why: { kind: 'resource', resource },
    })),
  );

/**
 * @param problem settled: its lags tell the facts
 * @param plan its choices and orders are kept
 * @param facts minutes by node, or `OPEN`
 */
export function keptOrder(problem: Problem, plan: Solution, facts: Int32Array): KeptOrder {
  const order = planOrder(problem, plan);
  const exclusive = sequences(problem, plan);
  const fixed = (node: number): boolean => node === 0 || facts[node] !== OPEN;
  const arcs = order.arcs.filter(({ to, why }) => {
    switch (why.kind) {
      case 'resource':
        // The sequences tell these.
        if (exclusive.has(why.resource)) return false;
        break;
      case 'total':
      case 'state':
      case 'soil':
      case 'reservoir':
      case 'tier':
        break;
      case 'calendar':
      case 'length':
      case 'lag':
      case 'horizon':
        return true;
    }
    // What has begun no longer waits for what has not; between facts there is nothing to keep.
    return !fixed(to);
  });
  const key = (task: number): number => {
    const fact = facts[startNode(task)]!;
    return fact === OPEN ? Infinity : fact;
  };
  const begunFirst = new Map(
    [...exclusive].map(([resource, list]) => [
      resource,
      [...list].sort((a, b) => (key(a) === key(b) ? 0 : key(a) - key(b)) || list.indexOf(a) - list.indexOf(b)),
    ]),
  );
  return { nodes: order.nodes, arcs, sequences: begunFirst };
}
