/** Arcs that keep every tier of a problem at the value that a solution has, or below. */
import type { Problem, Tier } from '../problem.ts';
import type { Solution } from '../outcome.ts';
import type { OrderArc, PlanOrder } from './plan-order.ts';
import { endNode, ORIGIN, startNode, takenBy, type Taken } from './taken.ts';

/**
 * With these arcs beside those of the order, no times make any tier worse. They ask for more than that: each term of a sum of
 * waiting stays at its own minutes, or within what is free; what costs by the minute gets no longer (what pays, no
 * shorter); the uses of a resource whose changes count keep their order.
 */
export function tierArcs(problem: Problem, solution: Solution, order: PlanOrder): readonly OrderArc[] {
  const taken = takenBy(problem, solution);
  return problem.tiers.flatMap((tier, index) =>
    arcsOf(tier, taken, order.times).map((arc): OrderArc => ({ ...arc, why: { kind: 'tier', tier: index } })),
  );
}

type Bare = Omit<OrderArc, 'why'>;

function arcsOf(tier: Tier, taken: Taken, times: Int32Array): readonly Bare[] {
  switch (tier.kind) {
    case 'latest': {
      const terms = tier.terms.flatMap((term) => {
        const node = taken.node(term.point);
        const plus = term.plus ?? 0;
        const minus = term.minus === true;
        return node < 0 ? [] : [{ node, plus, minus, value: plus + (minus ? -times[node]! : times[node]!) }];
      });
      // No tier of this kind is ever less than 0.
      const most = Math.max(0, ...terms.map((term) => term.value));
      return terms.map(({ node, plus, minus }) =>
        minus ? { from: ORIGIN, to: node, least: plus - most } : { from: node, to: ORIGIN, least: plus - most },
      );
    }
    case 'waiting':
      return tier.terms.flatMap((term) => {
        const from = taken.node(term.from);
        const to = taken.node(term.to);
        if (from < 0 || to < 0 || from === to || term.weight === 0) return [];
        return [{ from: to, to: from, least: -Math.max(term.free, times[to]! - times[from]!) }];
      });
    case 'cost':
      return taken.tasks.flatMap(({ index, mode, start, end }) => {
        const perMinute = mode.cost?.perMinute ?? 0;
        if (perMinute === 0) return [];
        return perMinute > 0
          ? [{ from: endNode(index), to: startNode(index), least: start - end }]
          : [{ from: startNode(index), to: endNode(index), least: end - start }];
      });
    case 'changes':
      return tier.resources.flatMap((resource) => {
        const users = taken.tasks
          .filter((task) => task.mode.uses.some((use) => use.resource === resource))
          .sort((a, b) => a.start - b.start || (a.id < b.id ? -1 : 1));
        return users.slice(1).map((after, position) => {
          const before = users[position]!;
          // Of two that start together, the id says which is first.
          return { from: startNode(before.index), to: startNode(after.index), least: before.id < after.id ? 0 : 1 };
        });
      });
  }
}
