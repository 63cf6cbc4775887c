/** Linear inequalities over variables, with terms of one variable gathered. */
import { Linear } from '../propagators/linear.ts';
import type { Core } from '../core.ts';

export class Sum {
  private readonly coefficients = new Map<number, number>();
  constant = 0;

  add(x: number, coefficient: number): this {
    this.coefficients.set(x, (this.coefficients.get(x) ?? 0) + coefficient);
    return this;
  }

  /** Posts: while the guard is true, this sum is at most the limit. */
  atMost(core: Core, limit: number, guard: number): void {
    this.post(core, 1, limit - this.constant, guard);
  }
  /** Posts: while the guard is true, this sum is at least the limit. */
  atLeast(core: Core, limit: number, guard: number): void {
    this.post(core, -1, this.constant - limit, guard);
  }

  private post(core: Core, sign: number, limit: number, guard: number): void {
    const terms = [...this.coefficients].flatMap(([x, coefficient]) => {
      const c = coefficient * sign;
      if (c === 0) return [];
      return [{ slot: c > 0 ? 2 * x : 2 * x + 1, coefficient: Math.abs(c) }];
    });
    if (terms.length > 0) core.post(new Linear(core.trail, terms, limit, guard));
    else if (limit < 0) core.clause(guard ^ core.trail.negation);
  }
}
