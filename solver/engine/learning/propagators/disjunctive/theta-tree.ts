/**
 * Θ-tree: earliest completion time (ECT) of a set of tasks on one machine, kept while tasks are put in one by one.
 *
 * ECT(Θ) is the greatest, over Ω ⊆ Θ, of the first start in Ω plus the minutes of Ω. Leaves are places in the order of earliest start;
 * each node holds the minutes of the tasks below it and their ECT, which is that of the right half, or that of the left half followed
 * by all minutes of the right one. In mirrored time the same tree tells the latest minute by which a set must have begun.
 *
 * Example: 5 minutes from 0 on, 6 from 25 on, 4 from 30 on: ECT = 25 + 6 + 4 = 35.
 *
 * Source: Vilím (2004), O(n log n) filtering algorithms for unary resource constraint.
 */

/** ECT of no task at all. */
const NEVER = -0x3fffffff;

export class ThetaTree {
  /** Node 1 is the root, node k has the children 2k and 2k + 1, and leaves begin at `leaves`. */
  private leaves = 1;
  private readonly minutes: Int32Array;
  private readonly completion: Int32Array;

  /** @param places most places there will ever be */
  constructor(places: number) {
    let leaves = 1;
    while (leaves < places) leaves *= 2;
    this.minutes = new Int32Array(2 * leaves);
    this.completion = new Int32Array(2 * leaves);
  }

  /** Takes out all tasks, and makes room for so many places. */
  clear(places: number): void {
    let leaves = 1;
    while (leaves < places) leaves *= 2;
    this.leaves = leaves;
    this.minutes.fill(0, 0, 2 * leaves);
    this.completion.fill(NEVER, 0, 2 * leaves);
  }

  /** ECT of all tasks in the tree; far below 0 when there is none. */
  get ect(): number {
    return this.completion[1]!;
  }

  /** Puts in a task; places must be in the order of earliest start. */
  insert(place: number, earliest: number, length: number): void {
    const { minutes, completion } = this;
    let node = this.leaves + place;
    minutes[node] = length;
    completion[node] = earliest + length;
    for (node >>= 1; node > 0; node >>= 1) {
      const right = 2 * node + 1;
      const after = minutes[right]!;
      const through = completion[right - 1]! + after;
      minutes[node] = minutes[right - 1]! + after;
      completion[node] = through > completion[right]! ? through : completion[right]!;
    }
  }

  /** ECT of the tasks in the tree but for the one at a place. */
  ectWithout(place: number): number {
    const { minutes, completion } = this;
    let sum = 0;
    let ect = NEVER;
    for (let node = this.leaves + place; node > 1; node >>= 1) {
      const other = node ^ 1;
      if ((node & 1) === 0) {
        const through = ect + minutes[other]!;
        ect = through > completion[other]! ? through : completion[other]!;
      } else if (completion[other]! + sum > ect) ect = completion[other]! + sum;
      sum += minutes[other]!;
    }
    return ect;
  }
}
