import { describe, expect, it } from 'vitest';
import { luby } from '../../../../solver/engine/learning/restarts.ts';
import { Trail } from '../../../../solver/engine/learning/trail.ts';

describe('bound literals', () => {
  const trail = new Trail(50);
  const x = trail.variable(3, 40);

  it('negate by one exclusive-or: not x ≥ v is x ≤ v − 1', () => {
    for (let v = 4; v <= 40; v++) {
      const literal = trail.atLeast(x, v) ^ trail.negation;
      expect(trail.slotOf(literal)).toBe(2 * x + 1);
      expect(trail.valueOf(literal)).toBe(1 - v);
      expect(literal ^ trail.negation).toBe(trail.atLeast(x, v));
    }
  });

  it('are constants outside the domain', () => {
    expect(trail.atLeast(x, 3)).toBe(trail.alwaysTrue);
    expect(trail.atLeast(x, 41)).toBe(trail.alwaysFalse);
    expect(trail.atMost(x, 40)).toBe(trail.alwaysTrue);
  });
});

describe('the trail', () => {
  function sealed(): { trail: Trail; x: number } {
    const trail = new Trail(50);
    const x = trail.variable(0, 40);
    trail.seal();
    trail.reserveLevels(4);
    return { trail, x };
  }

  it('finds the entry that first made a weaker literal true, and undoes exactly', () => {
    const { trail, x } = sealed();
    trail.newLevel();
    trail.set(2 * x, 5, 0);
    trail.newLevel();
    trail.set(2 * x, 9, 0);
    expect(trail.entryOf(2 * x, 4)).toBe(0);
    expect(trail.entryOf(2 * x, 6)).toBe(1);
    expect(trail.boundBefore(2 * x, 1)).toBe(5);
    trail.backtrack(1);
    expect(trail.bound[2 * x]).toBe(5);
    trail.backtrack(0);
    expect(trail.bound[2 * x]).toBe(0);
    expect(trail.last[2 * x]).toBe(-1);
  });

  it('refuses a bound that empties the domain and changes nothing', () => {
    const { trail, x } = sealed();
    trail.newLevel();
    trail.set(2 * x + 1, -10, 0);
    expect(trail.set(2 * x, 11, 0)).toBe(false);
    expect(trail.conflictSlot).toBe(2 * x);
    expect(trail.bound[2 * x]).toBe(0);
  });
});

describe('the restart sequence', () => {
  // source: M. Luby, A. Sinclair, D. Zuckerman (1993), Optimal speedup of Las Vegas algorithms
  it('is that of Luby, Sinclair and Zuckerman', () => {
    expect(Array.from({ length: 15 }, (_, i) => luby(i + 1))).toEqual([1, 1, 2, 1, 1, 2, 4, 1, 1, 2, 1, 1, 2, 4, 8]);
  });
});
