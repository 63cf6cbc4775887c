/**
 * Lengths of tasks as one term each: constant + coefficient × variable, 0 where absent.
 *
 * Work of fixed length is its presence times that length; other work gets a length variable, tied to end − start while present.
 */
import { Sum } from './sums.ts';
import type { Problem } from '../../problem.ts';
import type { Conditions } from './conditions.ts';
import type { Core } from '../core.ts';
import type { Points } from './points.ts';

export interface Term {
  readonly constant: number;
  readonly coefficient: number;
  readonly x: number;
}

export class Lengths {
  private readonly core: Core;
  private readonly problem: Problem;
  private readonly conditions: Conditions;
  private readonly points: Points;
  private readonly made = new Map<number, Term>();

  constructor(core: Core, problem: Problem, conditions: Conditions, points: Points) {
    this.core = core;
    this.problem = problem;
    this.conditions = conditions;
    this.points = points;
  }

  /** Adds factor × term to a sum. */
  addTo(sum: Sum, term: Term, factor: number): void {
    sum.constant += factor * term.constant;
    if (term.coefficient !== 0) sum.add(term.x, factor * term.coefficient);
  }

  /** value × literal as a term. */
  scaled(literal: number, value: number): Term {
    const { trail } = this.core;
    if (literal === trail.alwaysTrue) return { constant: value, coefficient: 0, x: 0 };
    if (literal === trail.alwaysFalse) return { constant: 0, coefficient: 0, x: 0 };
    const slot = trail.slotOf(literal);
    return (slot & 1) === 0
      ? { constant: 0, coefficient: value, x: slot >> 1 }
      : { constant: value, coefficient: -value, x: slot >> 1 };
  }

  of(t: number): Term {
    let term = this.made.get(t);
    if (term === undefined) {
      term = this.make(t);
      this.made.set(t, term);
    }
    return term;
  }

  private make(t: number): Term {
    const { core, points, conditions } = this;
    const { trail } = core;
    const modes = this.problem.tasks[t]!.modes;
    const present = points.present[t]!;
    const start = points.starts[t]!;
    const end = points.ends[t]!;
    if (start.x === end.x) return this.scaled(present, end.offset - start.offset);
    const real = modes.filter((mode) => mode !== null);
    const most = Math.min(this.problem.horizon, Math.max(...real.map((mode) => mode.longest)));
    const least = present === trail.alwaysTrue ? Math.min(most, ...real.map((mode) => mode.shortest)) : 0;
    const x = trail.variable(least, most);
    // A mode too long for the horizon is refuted by its own gap; its literal here must not empty the domain first.
    modes.forEach((mode, m) => {
      if (mode === null) return;
      const inMode = points.inMode[t]![m]!;
      core.clause(conditions.not(inMode), trail.atLeast(x, mode.shortest));
      core.clause(conditions.not(inMode), trail.atMost(x, mode.longest));
    });
    if (present !== trail.alwaysTrue) core.clause(present, trail.atMost(x, 0));
    // end − start = length, by two inequalities over the three variables.
    const excess = new Sum().add(end.x, 1).add(start.x, -1).add(x, -1);
    excess.constant = end.offset - start.offset;
    excess.atMost(core, 0, present);
    excess.atLeast(core, 0, present);
    return { constant: 0, coefficient: 1, x };
  }
}
