import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Core } from '../../../../solver/engine/learning/core.ts';

/** Differences among five variables of 0–7, some guarded by a Boolean of their own, and decisions with retreats in between. */
const difference = fc.record({
  from: fc.nat(4),
  to: fc.nat(4),
  weight: fc.integer({ min: -4, max: 4 }),
  guarded: fc.integer({ min: 0, max: 3 }).map((of) => of > 0),
});
const move = fc.oneof(
  fc.record({ slot: fc.nat(9), rise: fc.integer({ min: 1, max: 4 }) }),
  fc.record({ guard: fc.nat(7), true: fc.boolean() }),
  fc.record({ back: fc.nat(3) }),
);

describe('guarded differences', () => {
  test('after any decisions and retreats each bound is what its differences make of the decisions alone', () => {
    fc.assert(
      fc.property(
        fc.array(difference, { minLength: 3, maxLength: 8 }),
        fc.array(move, { minLength: 4, maxLength: 30 }),
        (differences, moves) => {
          const core = new Core(40);
          const { trail } = core;
          const variables = Array.from({ length: 5 }, () => trail.variable(0, 7));
          const arcs = differences
            .filter(({ from, to }) => from !== to)
            .map(({ from, to, weight, guarded }) => {
              const guard = guarded ? trail.atLeast(trail.variable(0, 1), 1) : trail.alwaysTrue;
              core.arcs.add(2 * variables[from]!, 2 * variables[to]!, weight, guard);
              return { from: 2 * variables[from]!, to: 2 * variables[to]!, weight, guard };
            });
          core.seal();
          if (core.dead) return;
          const guards = arcs.map(({ guard }) => guard).filter((guard) => guard !== trail.alwaysTrue);
          const decided: number[] = [];
          trail.reserveLevels(moves.length);
          for (const step of moves) {
            if ('back' in step) {
              decided.length = Math.min(decided.length, step.back);
              core.backtrack(decided.length);
            } else {
              const literal =
                'guard' in step
                  ? guards[step.guard]! ^ (step.true ? 0 : trail.negation)
                  : trail.literal(
                      2 * variables[step.slot >> 1]! + (step.slot & 1),
                      boundOf(core, step.slot) + step.rise,
                    );
              if ('guard' in step && guards[step.guard] === undefined) continue;
              if (trail.isTrue(literal) || trail.isFalse(literal)) continue;
              trail.newLevel();
              trail.setLiteral(literal, 0);
              decided.push(literal);
            }
            if (!core.propagate()) {
              decided.pop();
              core.backtrack(decided.length);
              continue;
            }
            expect([...trail.bound]).toEqual(closure(trail.initial, arcs, decided, core));
          }
        },
      ),
      { numRuns: 1500 },
    );
  });
});

const boundOf = (core: Core, slot: number): number => core.trail.bound[2 + slot]!;

/** By definition: rounds over all differences and their mirrors until nothing rises. */
function closure(
  initial: Int32Array,
  arcs: readonly { readonly from: number; readonly to: number; readonly weight: number; readonly guard: number }[],
  decided: readonly number[],
  { trail }: Core,
): number[] {
  const bound = [...initial];
  const holds = (literal: number): boolean => bound[trail.slotOf(literal)]! >= trail.valueOf(literal);
  const make = (literal: number): void => {
    bound[trail.slotOf(literal)] = Math.max(bound[trail.slotOf(literal)]!, trail.valueOf(literal));
  };
  decided.forEach(make);
  for (let again = true; again;) {
    const before = bound.join();
    for (const { from, to, weight, guard } of arcs) {
      if (holds(guard)) {
        bound[to] = Math.max(bound[to]!, bound[from]! + weight);
        bound[from ^ 1] = Math.max(bound[from ^ 1]!, bound[to ^ 1]! + weight);
      } else if (bound[from]! + weight + bound[to ^ 1]! > 0) make(guard ^ trail.negation);
    }
    again = before !== bound.join();
  }
  return bound;
}
