/**
 * Which tasks can be in progress at one minute: sets that keep every capacity and hold no two tasks that must stand apart. There are too
 * many to list them all in a large project, so they are sought by what their tasks weigh.
 *
 * Sources: Mingozzi, Maniezzo, Ricciardelli, Bianco (1998), An exact algorithm for the resource-constrained project scheduling problem
 * based on a new mathematical formulation; Land & Doig (1960) for branch and bound.
 */

export interface ConcurrencyQuestion {
  /** Amounts by task and resource. */
  readonly amounts: readonly (readonly number[])[];
  /** Capacity of each resource. */
  readonly capacities: readonly number[];
  /** Whether two tasks are never in progress at one minute. */
  readonly apart: (a: number, b: number) => boolean;
}

/** Sets told for each task. */
const EACH = 2;

interface Search {
  readonly weights: ArrayLike<number>;
  readonly limit: number;
  /** Sets found at which to stop. */
  readonly most: number;
}

export class ConcurrentSets {
  private readonly amounts: readonly (readonly number[])[];
  private readonly capacities: readonly number[];
  private readonly meets: readonly (readonly boolean[])[];
  /** Tasks that fit at all. */
  readonly tasks: readonly number[];
  private looksLeft = 0;
  private readonly chosen: number[] = [];
  private found: number[][] = [];

  constructor({ amounts, capacities, apart }: ConcurrencyQuestion) {
    this.amounts = amounts;
    this.capacities = capacities;
    const none = capacities.map(() => 0);
    this.tasks = amounts.flatMap((amount, task) => (this.fits(none, amount) ? [task] : []));
    this.meets = amounts.map((mine, a) => amounts.map((other, b) => a !== b && !apart(a, b) && this.fits(mine, other)));
  }

  private fits(used: readonly number[], more: readonly number[]): boolean {
    return this.capacities.every((capacity, r) => used[r]! + more[r]! <= capacity);
  }

  private with(used: readonly number[], task: number): number[] {
    return used.map((amount, r) => amount + this.amounts[task]![r]!);
  }

  /**
   * A maximal set: a task that fits alone, then each that still can join, in an order.
   * @param order of all tasks
   */
  grown(task: number, order: readonly number[]): number[] {
    const set = [task];
    let used: readonly number[] = this.amounts[task]!;
    for (const other of order) {
      if (!set.every((one) => this.meets[one]![other]!) || !this.fits(used, this.amounts[other]!)) continue;
      set.push(other);
      used = this.with(used, other);
    }
    return set;
  }

  /**
   * Sets that weigh more than a limit, at most `EACH` of them for each task that is their heaviest; tasks of no weight are left out.
   * @param weights by task, ≥ 0
   * @param looks sets looked at before giving up
   * @returns empty only where there is none; null where none was found before it was given up
   */
  heavier(weights: ArrayLike<number>, limit: number, looks: number): number[][] | null {
    this.looksLeft = looks;
    this.found = [];
    const open = this.tasks.filter((task) => weights[task]! > 0).sort((a, b) => weights[b]! - weights[a]! || a - b);
    const none = this.capacities.map(() => 0);
    let rest = weightOf(open, weights);
    for (const [at, task] of open.entries()) {
      if (rest <= limit) break;
      this.add(task, { weights, limit, most: this.found.length + EACH }, 0, none, open.slice(at + 1));
      rest -= weights[task]!;
    }
    return this.found.length === 0 && this.looksLeft < 0 ? null : this.found;
  }

  /** Looks at the sets that hold the chosen tasks, one more, and some of the open ones, which are in order of their weight. */
  private add(task: number, search: Search, before: number, used: readonly number[], open: readonly number[]): void {
    const { weights, limit, most } = search;
    if (--this.looksLeft < 0) return;
    const weight = before + weights[task]!;
    const more = this.with(used, task);
    const joining = open.filter((other) => this.meets[task]![other]! && this.fits(more, this.amounts[other]!));
    this.chosen.push(task);
    if (joining.length === 0 && weight > limit) this.found.push([...this.chosen]);
    let rest = weightOf(joining, weights);
    for (const [at, other] of joining.entries()) {
      if (weight + rest <= limit || this.found.length >= most || this.looksLeft < 0) break;
      this.add(other, search, weight, more, joining.slice(at + 1));
      rest -= weights[other]!;
    }
    this.chosen.pop();
  }
}

/** What a set weighs. */
export function weightOf(set: readonly number[], weights: ArrayLike<number>): number {
  return set.reduce((sum, task) => sum + weights[task]!, 0);
}
