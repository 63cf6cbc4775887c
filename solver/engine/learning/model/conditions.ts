/**
 * Choices as bound literals, and conjunctions and disjunctions of them.
 *
 * A choice of two options is one 0–1 variable, of more one an option with exactly one true. A conjunction of several literals gets a
 * variable of its own, equivalent to it and made once.
 */
import type { Literal, Problem } from '../../problem.ts';
import type { Core } from '../core.ts';

export class Conditions {
  readonly core: Core;
  /** By choice index: a literal an option. */
  readonly options: number[][] = [];
  private readonly index = new Map<string, number>();
  private readonly made = new Map<string, number>();
  private readonly choiceOf = new Map<number, number>();

  constructor(core: Core, problem: Problem) {
    this.core = core;
    problem.choices.forEach((choice, c) => {
      this.index.set(choice.id, c);
      this.options.push(this.makeOptions(choice.options.length));
      for (const literal of this.options[c]!) this.choiceOf.set(literal, c);
    });
  }

  private makeOptions(count: number): number[] {
    const { core } = this;
    if (count === 1) return [core.trail.alwaysTrue];
    if (count === 2) {
      const second = this.boolean();
      return [this.not(second), second];
    }
    const literals = Array.from({ length: count }, () => this.boolean());
    core.clause(...literals);
    literals.forEach((a, i) => literals.slice(i + 1).forEach((b) => core.clause(this.not(a), this.not(b))));
    return literals;
  }

  /** A new 0–1 variable's ⟦b ≥ 1⟧. */
  boolean(): number {
    const { trail } = this.core;
    return trail.atLeast(trail.variable(0, 1), 1);
  }

  not(literal: number): number {
    return literal ^ this.core.trail.negation;
  }

  choiceIndex(id: string): number {
    const c = this.index.get(id);
    if (c === undefined) throw new Error(`no choice ${id}: the problem was not validated`);
    return c;
  }

  /** True when the choice takes one of the options. */
  among(choice: number, options: readonly number[]): number {
    const literals = this.options[choice]!;
    const set = [...new Set(options)].sort((a, b) => a - b);
    if (set.length === literals.length) return this.core.trail.alwaysTrue;
    if (set.length === 0) return this.core.trail.alwaysFalse;
    if (set.length === 1) return literals[set[0]!]!;
    const others = literals.filter((_, o) => !set.includes(o));
    if (others.length === 1) return this.not(others[0]!);
    return this.any(set.map((o) => literals[o]!));
  }

  literalsOf(literals: readonly Literal[] | undefined): number[] {
    return (literals ?? []).map((l) => this.among(this.choiceIndex(l.choice), l.options));
  }

  /** True exactly when all are. */
  all(literals: readonly number[]): number {
    const { alwaysTrue, alwaysFalse } = this.core.trail;
    const set = [...new Set(literals)].filter((l) => l !== alwaysTrue).sort((a, b) => a - b);
    if (set.length === 0) return alwaysTrue;
    if (set.length === 1) return set[0]!;
    if (set.some((l) => l === alwaysFalse || set.includes(this.not(l)))) return alwaysFalse;
    for (let i = 0; i < set.length; i++)
      for (let j = i + 1; j < set.length; j++) if (this.exclude(set[i]!, set[j]!)) return alwaysFalse;
    const key = set.join(' ');
    const known = this.made.get(key);
    if (known !== undefined) return known;
    const literal = this.boolean();
    for (const l of set) this.core.clause(this.not(literal), l);
    this.core.clause(literal, ...set.map((l) => this.not(l)));
    this.made.set(key, literal);
    return literal;
  }

  /** True exactly when one is. */
  any(literals: readonly number[]): number {
    return this.not(this.all(literals.map((l) => this.not(l))));
  }

  /** Whether two literals are different options of one choice. */
  exclude(a: number, b: number): boolean {
    if (a === this.not(b)) return true;
    const c = this.choiceOf.get(a);
    return a !== b && c !== undefined && c === this.choiceOf.get(b);
  }
}
