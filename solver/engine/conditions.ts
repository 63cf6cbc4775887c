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
  /** Literals of one option by `pair(choice, option)`: most are such. */
  private readonly singleIndex = new Map<number, number>();
  private readonly conditionIndex = new Map<string, number>([['', 0]]);
  /** Conditions of one literal by that literal, and of two by `pair` of them. */
  private readonly ofOne: number[] = [];
  private readonly ofTwo = new Map<number, number>();
  private readonly choiceIndex: ReadonlyMap<string, number>;
  /** Answers of `and` and `without` by what was asked: many lags hang on the same tasks. */
  private readonly joined = new Map<string, number>();
  private readonly joinedTwo = new Map<number, number>();
  private readonly rests = new Map<number, number>();

  constructor(private readonly problem: Problem) {
    this.choiceIndex = new Map(problem.choices.map((choice, index) => [choice.id, index]));
  }

  /** Index of the condition with these literals, made when it is new. */
  of(literals: readonly Literal[] | undefined): number {
    if (literals === undefined || literals.length === 0) return 0;
    return this.ofChoiceLiterals(
      literals.map((literal) => ({
        choice: this.choiceIndex.get(literal.choice) ?? -1,
        options: literal.options,
      })),
    );
  }

  /** The conjunction of two or three conditions. */
  and(a: number, b: number, c = 0): number {
    // Most are the empty condition beside at most one other.
    if (a === 0 || a === b) return this.andTwo(b, c);
    if (b === 0 || b === c) return this.andTwo(a, c);
    if (c === 0 || c === a) return this.andTwo(a, b);
    const key = `${a} ${b} ${c}`;
    let index = this.joined.get(key);
    if (index === undefined) {
      index = this.ofChoiceLiterals([...this.literalsOf(a), ...this.literalsOf(b), ...this.literalsOf(c)]);
      this.joined.set(key, index);
    }
    return index;
  }

  private andTwo(first: number, second: number): number {
    if (second === 0 || first === second) return first;
    if (first === 0) return second;
    const key = pair(first, second);
    let index = this.joinedTwo.get(key);
    if (index === undefined) {
      index = this.ofChoiceLiterals([...this.literalsOf(first), ...this.literalsOf(second)]);
      this.joinedTwo.set(key, index);
    }
    return index;
  }

  /** What of `condition` is left to be shown when `given` is known to hold. */
  without(condition: number, given: number): number {
    if (condition === given) return 0;
    if (condition === 0 || given === 0) return condition;
    const key = pair(condition, given);
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
    const plain = this.ofPlain(literals);
    if (plain >= 0) return plain;
    const merged: { readonly choice: number; options: readonly number[] }[] = [];
    for (const { choice, options } of literals) {
      const sorted = isAscending(options) ? options : [...new Set(options)].sort((a, b) => a - b);
      const before = merged.find((other) => other.choice === choice);
      if (before === undefined) merged.push({ choice, options: sorted });
      else before.options = before.options.filter((option) => sorted.includes(option));
    }
    if (merged.some(({ choice }, k) => k > 0 && choice < (merged[k - 1] as ChoiceLiteral).choice))
      merged.sort((a, b) => a.choice - b.choice);
    const indices: number[] = [];
    for (const literal of merged) if (!this.isWhole(literal)) indices.push(this.literal(literal));
    return this.conditionOf(indices);
  }

  /** The condition of one or two literals on different choices; −1 where they are not so plain. */
  private ofPlain([first, second, third]: readonly ChoiceLiteral[]): number {
    if (first === undefined || third !== undefined || !isAscending(first.options)) return -1;
    if (second === undefined) return this.isWhole(first) ? 0 : this.conditionOf([this.literal(first)]);
    if (second.choice === first.choice || !isAscending(second.options)) return -1;
    const inOrder = first.choice < second.choice ? [first, second] : [second, first];
    const indices: number[] = [];
    for (const literal of inOrder) if (!this.isWhole(literal)) indices.push(this.literal(literal));
    return this.conditionOf(indices);
  }

  /** True when the literal holds whatever is chosen. */
  private isWhole({ choice, options }: ChoiceLiteral): boolean {
    return options.length === this.problem.choices[choice]?.options.length;
  }

  private conditionOf(indices: number[]): number {
    const [first, second, third] = indices;
    if (first === undefined) return 0;
    const key = third === undefined ? '' : indices.join(' ');
    const known =
      second === undefined
        ? this.ofOne[first]
        : third === undefined
          ? this.ofTwo.get(pair(first, second))
          : this.conditionIndex.get(key);
    if (known !== undefined) return known;
    const index = this.conditions.length;
    this.conditions.push(indices);
    if (second === undefined) this.ofOne[first] = index;
    else if (third === undefined) this.ofTwo.set(pair(first, second), index);
    else this.conditionIndex.set(key, index);
    return index;
  }

  private literal(literal: ChoiceLiteral): number {
    const { choice, options } = literal;
    const single = options.length === 1 ? pair(choice, options[0] as number) : -1;
    const key = single < 0 ? `${choice}:${options.join(',')}` : '';
    const known = single < 0 ? this.literalIndex.get(key) : this.singleIndex.get(single);
    if (known !== undefined) return known;
    const index = this.literals.length;
    this.literals.push(literal);
    if (single < 0) this.literalIndex.set(key, index);
    else this.singleIndex.set(single, index);
    return index;
  }
}

/** One number for two small ones, exact while both are below 2^26. */
function pair(a: number, b: number): number {
  return a * 2 ** 26 + b;
}

function isAscending(options: readonly number[]): boolean {
  for (let k = 1; k < options.length; k++) if ((options[k] as number) <= (options[k - 1] as number)) return false;
  return true;
}
