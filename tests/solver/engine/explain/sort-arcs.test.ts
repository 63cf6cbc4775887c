import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { OrderArc } from '../../../../solver/engine/explain/plan-order.ts';
import { Precedence } from '../../../../solver/engine/explain/precedence.ts';
import { sortedByTimes } from '../../../../solver/engine/explain/sort-arcs.ts';

const NODES = 40;
const drawn = fc.record({
  times: fc.array(fc.nat(9), { minLength: NODES, maxLength: NODES }).map((times) => Int32Array.from(times)),
  arcs: fc.array(
    fc.record({
      from: fc.nat(NODES - 1),
      to: fc.nat(NODES - 1),
      least: fc.integer({ min: -3, max: 3 }),
      why: fc.constant({ kind: 'horizon' } as const),
    }),
    { maxLength: 60 },
  ),
});

test('arcs sorted by counting stand as a stable sort by comparison puts them', () => {
  fc.assert(
    fc.property(drawn, ({ times, arcs }) => {
      const compared = [...arcs].sort(
        (a, b) => times[a.from]! - times[b.from]! || times[a.to]! - times[b.to]! || a.from - b.from || a.to - b.to,
      );
      expect(sortedByTimes(arcs, times)).toEqual(compared);
    }),
  );
});

test('a node precedes another where a path of arcs of least 0 or more leads there, however they are told', () => {
  fc.assert(
    fc.property(drawn, fc.nat(60), ({ times, arcs }, cut) => {
      const known = new Precedence(NODES);
      known.add(arcs.slice(0, cut), times);
      known.add(arcs.slice(cut), times);
      const nodes = Array.from({ length: NODES }, (_, node) => node);
      const told = nodes.map((from) => nodes.filter((to) => to !== from && known.precedes(from, to)));
      expect(told).toEqual(
        nodes.map((from) => {
          const reached = reachedFrom(from, arcs);
          return nodes.filter((to) => to !== from && reached.has(to));
        }),
      );
    }),
  );
});

function reachedFrom(start: number, arcs: readonly OrderArc[]): ReadonlySet<number> {
  const reached = new Set([start]);
  for (const node of reached) for (const { from, to, least } of arcs) if (from === node && least >= 0) reached.add(to);
  return reached;
}
