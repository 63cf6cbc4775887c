import { describe, expect, it } from 'vitest';
import { SureOrders } from '../../../../../../solver/engine/learning/propagators/disjunctive/sure-orders.ts';
import { Trail } from '../../../../../../solver/engine/learning/trail.ts';
import { seeded } from '../../../../../support/seeded.ts';

describe('rows of sure orders', () => {
  it('say what the order literals say, in both directions, on the way down and back up', () => {
    const chance = seeded(7);
    const n = 37;
    const trail = new Trail(10);
    const literals = new Int32Array(n * n).fill(trail.alwaysFalse);
    for (let a = 0; a < n; a++)
      for (let b = a + 1; b < n; b++) {
        if (chance.chance(0.1)) literals[a * n + b] = trail.alwaysTrue;
        else {
          const x = trail.variable(0, 1);
          literals[a * n + b] = trail.atLeast(x, 1);
          literals[b * n + a] = trail.atMost(x, 0);
        }
      }
    trail.seal();
    trail.reserveLevels(0);
    const orders = new SureOrders(trail, n, literals);
    const watched = orders.watches();
    const bits = (row: Int32Array): boolean[] =>
      Array.from(literals, (_, pair) => {
        const l = pair % n;
        return ((row[((pair - l) / n) * orders.words + (l >> 5)]! >>> (l & 31)) & 1) === 1;
      });
    const agree = (): void => {
      expect(bits(orders.after[0])).toEqual(Array.from(literals, (literal) => trail.isTrue(literal)));
      expect(bits(orders.after[1])).toEqual(
        Array.from(literals, (_, pair) => trail.isTrue(literals[(pair % n) * n + Math.floor(pair / n)]!)),
      );
    };
    agree();
    let decided = 0;
    for (let round = 0; round < 60; round++) {
      if (trail.level > 0 && chance.chance(0.3)) {
        const level = chance.int(0, trail.level - 1);
        trail.backtrack(level);
        orders.backtrack(level);
      }
      trail.newLevel();
      for (const [slot, pair] of chance.sample(watched, 20)) {
        if (trail.bound[slot]! + trail.bound[slot ^ 1]! === 0) continue;
        trail.setLiteral(literals[pair]!, 0);
        orders.note(pair);
        orders.note(pair);
        decided++;
      }
      agree();
    }
    expect(decided).toBeGreaterThan(300);
  });
});
