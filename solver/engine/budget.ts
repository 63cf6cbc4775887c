/**
 * When to stop, counted in work units and never timed, so that the same problem, seed and effort end at the same place on any
 * machine. A unit is about a thousandth of a millisecond of search on a present-day desktop; the parts of the search book what they
 * do. The asker's `shouldStop` is polled every `POLL` units.
 */
const POLL = 2_000;

export class Budget {
  /** Units spent so far. */
  spent = 0;
  /** The asker said stop. */
  stopped = false;
  private nextPoll = POLL;

  /**
   * @param effort most units to spend
   * @param shouldStop asked now and then; true ends the search
   */
  constructor(
    readonly effort: number,
    private readonly shouldStop: (() => boolean) | undefined,
  ) {}

  /** Books units. @returns true when the search must end */
  spend(units: number): boolean {
    this.spent += units;
    return this.over();
  }

  /** True when the search must end. */
  over(): boolean {
    if (this.stopped || this.spent >= this.effort) return true;
    if (this.spent >= this.nextPoll) {
      this.nextPoll = this.spent + POLL;
      if (this.shouldStop !== undefined && this.shouldStop()) this.stopped = true;
    }
    return this.stopped;
  }
}
