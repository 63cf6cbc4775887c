/**
 * What tasks surely need in every stretch of time, held against what there is.
 *
 * A present task surely spends `min(b − a, p, ECT − a, b − LST)` of its minutes in `[a, b)`, whether it is placed as far left or right as it
 * can be (Lopez, Erschler and Esquirol 1992; Baptiste, Le Pape and Nuijten 1999).
 */
import type { Store } from '../propagation/store.ts';

/** Most pairs of a stretch and a task to look at in one list; beyond, only some of the stretches are tried. */
const STRETCHES = 1_000_000;

export class Claims {
  private readonly earliest: Int32Array;
  private readonly latest: Int32Array;
  private readonly length: Int32Array;
  private readonly amount: Float64Array;
  private count = 0;

  constructor(private readonly store: Store) {
    const { taskCount } = store.compiled;
    this.earliest = new Int32Array(taskCount);
    this.latest = new Int32Array(taskCount);
    this.length = new Int32Array(taskCount);
    this.amount = new Float64Array(taskCount);
  }

  clear(): void {
    this.count = 0;
  }

  /** Adds a present task that needs an amount all the while it lasts. */
  add(task: number, amount: number): void {
    const { store } = this;
    this.earliest[this.count] = store.earliestStart(task);
    this.latest[this.count] = store.latestEnd(task);
    this.length[this.count] = Math.max(store.shortest(task), store.earliestEnd(task) - store.latestStart(task));
    this.amount[this.count] = amount;
    this.count++;
  }

  /**
   * Whether in some stretch more is needed than there is.
   * @param supply summed from minute 0: entry `t` is what there is before minute `t`
   */
  exceed(supply: Float64Array): boolean {
    const { count, earliest, latest, length, amount, store } = this;
    if (count < 2) return false;
    // Stretches begin where some task can first start and end where some task must have ended.
    const stride = Math.max(1, Math.ceil(count ** 3 / STRETCHES));
    for (let i = 0; i < count; i++) {
      const a = earliest[i] as number;
      for (let j = i % stride; j < count; j += stride) {
        const b = latest[j] as number;
        if (b <= a) continue;
        let need = 0;
        const room = (supply[b] as number) - (supply[a] as number);
        for (let k = 0; k < count; k++) {
          const p = length[k] as number;
          let inside = b - a < p ? b - a : p;
          const left = (earliest[k] as number) + p - a;
          if (left < inside) inside = left;
          const right = b - (latest[k] as number) + p;
          if (right < inside) inside = right;
          if (inside > 0) need += inside * (amount[k] as number);
        }
        if (need > room) return true;
      }
    }
    store.work += Math.ceil(count ** 3 / (stride * 10));
    return false;
  }
}
