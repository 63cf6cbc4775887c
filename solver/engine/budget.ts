/**
 * When to stop, counted in work units and never timed, so that the same problem, seed and effort end at the same place on any
 * machine. Search books the small steps it takes (a bound raised, an entry looked at); `STEPS` of them are one unit, which is about
 * a microsecond on a present-day desktop. The asker's `shouldStop` is polled every half millisecond or so.
 */
export const STEPS = 20;
const POLL = 10_000;

export class Budget {
  /** The asker said stop. */
  stopped = false;
  private steps = 0;
  private nextPoll = POLL;
  private most: number;

  /**
   * @param effort most units to spend
   * @param shouldStop asked now and then; true ends the search
   */
  constructor(
    effort: number,
    private readonly shouldStop: (() => boolean) | undefined,
  ) {
    this.most = effort * STEPS;
  }

  /** Units spent so far. */
  get spent(): number {
    return Math.floor(this.steps / STEPS);
  }

  /** Units left. */
  get left(): number {
    return Math.max(0, Math.floor((this.most - this.steps) / STEPS));
  }

  /** Whether so many more steps can be spent and some are left then. */
  allows(steps: number): boolean {
    return this.steps + steps < this.most;
  }

  /** From now on no more units than this are spent in all. */
  limitTo(effort: number): void {
    this.most = Math.min(this.most, effort * STEPS);
  }

  /** Books steps. @returns true when the search must end */
  spend(steps: number): boolean {
    this.steps += steps;
    return this.over();
  }

  /** Books all that another budget has spent. @returns true when the search must end */
  spendAllOf(part: Budget): boolean {
    return this.spend(part.steps);
  }

  /** Asks the asker now, for work that is not counted. @returns true when the search must end */
  poll(): boolean {
    this.stopped ||= this.shouldStop?.() === true;
    return this.stopped;
  }

  /** True when the search must end. */
  over(): boolean {
    if (this.stopped || this.steps >= this.most) return true;
    if (this.steps >= this.nextPoll) {
      this.nextPoll = this.steps + POLL;
      this.poll();
    }
    return this.stopped;
  }
}
