/**
 * What shaving calls a fact holds in every solution, counted out one by one; the clauses are invented.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Core } from '../../../../solver/engine/learning/core.ts';
import { SHARED } from '../../../../solver/engine/learning/manner.ts';
import { Shaving } from '../../../../solver/engine/learning/shaving.ts';

describe('shaving', () => {
  it('moves a bound past each value that propagation refutes', () => {
    const core = new Core(20, SHARED);
    const { trail } = core;
    const x = trail.variable(0, 5);
    const y = trail.variable(0, 1);
    // While x ≤ 2, y would have to be 1 and 0.
    core.clause(trail.atLeast(x, 3), trail.atLeast(y, 1));
    core.clause(trail.atLeast(x, 3), trail.atMost(y, 0));
    core.seal();
    expect(trail.root[2 * x]).toBe(0);
    new Shaving().run(core, Infinity);
    expect(trail.root[2 * x]).toBe(3);
    expect(trail.level).toBe(0);
  });

  it('stops at its limit of work and goes on there the next time', () => {
    const core = new Core(20, SHARED);
    const { trail } = core;
    const side = trail.variable(0, 1);
    const variables = [1, 2, 3].map(() => trail.variable(0, 5));
    for (const x of variables) {
      core.clause(trail.atLeast(x, 3), trail.atLeast(side, 1));
      core.clause(trail.atLeast(x, 3), trail.atMost(side, 0));
    }
    core.seal();
    const shaving = new Shaving();
    const moved = (): number => variables.filter((x) => trail.root[2 * x] === 3).length;
    const seen = [moved()];
    for (let run = 0; run < 10; run++) {
      shaving.run(core, core.work + 1);
      seen.push(moved());
    }
    expect(seen[0]).toBe(0);
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
    expect(seen.filter((count) => count > 0 && count < 3)).not.toHaveLength(0);
    expect(seen[10]).toBe(3);
  });

  it('keeps every solution of random clauses', () => {
    const literal = fc.record({ of: fc.nat(3), value: fc.integer({ min: 1, max: 3 }), above: fc.boolean() });
    fc.assert(
      fc.property(fc.array(fc.array(literal, { minLength: 1, maxLength: 3 }), { maxLength: 14 }), (clauses) => {
        const core = new Core(20, SHARED);
        const { trail } = core;
        const variables = [0, 1, 2, 3].map(() => trail.variable(0, 3));
        for (const clause of clauses)
          core.clause(
            ...clause.map(({ of, value, above }) =>
              above ? trail.atLeast(variables[of]!, value) : trail.atMost(variables[of]!, value - 1),
            ),
          );
        core.seal();
        if (!core.dead) new Shaving().run(core, Infinity);
        const solutions = [...Array(256).keys()]
          .map((code) => [0, 1, 2, 3].map((of) => (code >> (2 * of)) & 3))
          .filter((values) =>
            clauses.every((clause) =>
              clause.some(({ of, value, above }) => (above ? values[of]! >= value : values[of]! < value)),
            ),
          );
        const lost = solutions.filter((values) =>
          values.some((value, of) => {
            const x = variables[of]!;
            return core.dead || value < trail.root[2 * x]! || value > -trail.root[2 * x + 1]!;
          }),
        );
        expect(lost).toEqual([]);
      }),
      { numRuns: 300, seed: 7 },
    );
  });
});
