/**
 * Literals and conjunctions of a problem, each kept once.
 *
 * A **literal** is a choice with the set of its options that make it true. A **condition** is a conjunction of literals, at
 * most one a choice (two on one choice are met by their intersection). Condition 0 is the empty one, always true.
 */
import type { Literal, Problem } from './problem.ts';

export interface ChoiceLiteral {
  readonly choice: number;
  /** Options that make it true, ascending; empty: never true. */
  readonly options: readonly number[];
}

export class ConditionTable {
  readonly literals: ChoiceLiteral[] = [];
  /** Literal indices of each condition, ascending by choice. */
  readonly conditions: number[][] = [[]];
  private readonly literalIndex = new Map<string, number>();
  private readonly conditionIndex = new Map<string, number>([['', 0]]);
  private readonly choiceIndex: ReadonlyMap<string, number>;
  /** Answers of `and` and `without` by what was asked: many lags hang on the same tasks. */
  private readonly joined = new Map<string, number>();
  private readonly rests = new Map<string, number>();

  constructor(private readonly problem: Problem) {
    this.choiceIndex = new Map(problem.choices.map((choice, index) => [choice.id, index]));
  }

  /** Index of the condition with these literals, made when it is new. */
  of(literals: readonly Literal[] | undefined): number {
    return this.ofChoiceLiterals(
      (literals ?? []).map((literal) => ({
        choice: this.choiceIndex.get(literal.choice) ?? -1,
        options: literal.options,
      })),
    );
  }

  /** The conjunction of several conditions. */
  and(...conditions: readonly number[]): number {
    // Most are the empty condition beside at most one other.
    let only = 0;
    let several = false;
    for (const condition of conditions) {
      if (condition === 0 || condition === only) continue;
      if (only !== 0) several = true;
      only = condition;
    }
    if (!several) return only;
    const key = conditions.join(' ');
    let index = this.joined.get(key);
    if (index === undefined) {
      index = this.ofChoiceLiterals(conditions.flatMap((condition) => this.literalsOf(condition)));
      this.joined.set(key, index);
    }
    return index;
  }

  /** What of `condition` is left to be shown when `given` is known to hold. */
  without(condition: number, given: number): number {
    if (condition === given) return 0;
    if (condition === 0 || given === 0) return condition;
    const key = `${condition} ${given}`;
    let index = this.rests.get(key);
    if (index === undefined) {
      const known = this.literalsOf(given);
      const proves = (other: ChoiceLiteral, literal: ChoiceLiteral): boolean =>
        other.choice === literal.choice && other.options.every((option) => literal.options.includes(option));
      index = this.ofChoiceLiterals(
        this.literalsOf(condition).filter((literal) => !known.some((other) => proves(other, literal))),
      );
      this.rests.set(key, index);
    }
    return index;
  }

  literalsOf(condition: number): ChoiceLiteral[] {
    return (this.conditions[condition] ?? []).map((index) => this.literals[index] as ChoiceLiteral);
  }

  ofChoiceLiterals(literals: readonly ChoiceLiteral[]): number {
    if (literals.length === 0) return 0;
    const [only] = literals;
    if (literals.length === 1 && only !== undefined && isAscending(only.options))
      return this.isWhole(only) ? 0 : this.conditionOf([this.literal(only)]);
    const optionsOf = new Map<number, number[]>();
    for (const { choice, options } of literals) {
      const before = optionsOf.get(choice);
      const sorted = [...new Set(options)].sort((a, b) => a - b);
      optionsOf.set(choice, before === undefined ? sorted : before.filter((option) => sorted.includes(option)));
    }
    const indices: number[] = [];
    for (const [choice, options] of [...optionsOf].sort((a, b) => a[0] - b[0])) {
      if (!this.isWhole({ choice, options })) indices.push(this.literal({ choice, options }));
    }
    return this.conditionOf(indices);
  }

  /** True when the literal holds whatever is chosen. */
  private isWhole({ choice, options }: ChoiceLiteral): boolean {
    return options.length === this.problem.choices[choice]?.options.length;
  }

  private conditionOf(indices: number[]): number {
    const key = indices.join(' ');
    const known = this.conditionIndex.get(key);
    if (known !== undefined) return known;
    this.conditionIndex.set(key, this.conditions.length);
    this.conditions.push(indices);
    return this.conditions.length - 1;
  }

  private literal(literal: ChoiceLiteral): number {
    const key = `${literal.choice}:${literal.options.join(',')}`;
    const known = this.literalIndex.get(key);
    if (known !== undefined) return known;
    this.literalIndex.set(key, this.literals.length);
    this.literals.push(literal);
    return this.literals.length - 1;
  }
}

function isAscending(options: readonly number[]): boolean {
  for (let k = 1; k < options.length; k++) if ((options[k] as number) <= (options[k - 1] as number)) return false;
  return true;
}
