/**
 * Lists of modes, one a task: drawn, changed, and mended where the stocks do not reach.
 *
 * Modes trade minutes, work on resources and draws on stocks for each other, so a list is drawn by the least weighed sum of the three with
 * weights that chance chooses. Mending gives tasks thriftier modes, those first that save most for the minutes they cost beyond the
 * slack of the plan before; filling spends what a stock has left on modes that are shorter or lighter.
 *
 * Sources: Hartmann (2001), Project scheduling with multiple modes: a genetic algorithm, for the single mode changes; Van Peteghem
 * and Vanhoucke (2010), A genetic algorithm for the preemptive and non-preemptive multi-mode project scheduling problem, for mending and
 * mode improvement.
 */
import type { Random } from '../random.ts';
import type { ModeProject } from './mode-project.ts';

/** Draws of which mending takes the best. */
const DRAWS = 12;
/** What a minute of work on a whole resource costs, in minutes of length, for each task of the project. */
const WORK = 0.05;
/** Most modes that a change draws anew. */
const MOST_CHANGED = 4;
/** What mending adds to each cost, so that of modes that cost nothing the one that saves most is taken. */
const LEAST_HARM = 0.1;

export class ModeLists {
  /** By mode: work as a share of the resource's capacity, over all resources, minutes. */
  private readonly work: Float64Array;
  /** By mode: 1 where it fits under the capacities at all. */
  private readonly fits: Uint8Array;
  /** By stock: what the list in hand draws, and what a unit is of the whole. */
  private readonly used: Float64Array;
  private readonly unit: Float64Array;

  constructor(
    private readonly given: ModeProject,
    private readonly random: Random,
  ) {
    const { length } = given.modes;
    const { stocks, stock } = given.draws;
    this.used = new Float64Array(stocks);
    this.unit = Float64Array.from(stock, (amount) => 1 / Math.max(1, amount));
    this.work = new Float64Array(length.length);
    this.fits = new Uint8Array(length.length).fill(1);
    this.reckonWork();
  }

  private reckonWork(): void {
    const { project, most } = this.given;
    const { firstMode, length } = this.given.modes;
    const { amounts, uses } = this.given.use;
    const { count } = project;
    for (let task = 0; task < count; task++)
      for (let mode = firstMode[task] as number; mode < (firstMode[task + 1] as number); mode++)
        (amounts[mode] as Int32Array).forEach((amount, k) => {
          const capacity = most[uses.items[(uses.start[task] as number) + k] as number] as number;
          if (amount > capacity) this.fits[mode] = 0;
          else if (amount > 0)
            this.work[mode] = (this.work[mode] as number) + (amount * (length[mode] as number)) / capacity;
        });
  }

  /** Draws a whole list. */
  sample(modes: Int32Array): void {
    const { random, given, fits, work, unit } = this;
    const { firstMode, length } = given.modes;
    const { stocks, drawn } = given.draws;
    const count = modes.length;
    const ofMinutes = random.below(100) / 100;
    const ofWork = (3 * random.below(100)) / 100;
    const ofStock = Float64Array.from(unit, (share) => (share * count * random.below(200)) / 100);
    for (let task = 0; task < count; task++) {
      let least = Infinity;
      modes[task] = firstMode[task] as number;
      for (let mode = firstMode[task] as number; mode < (firstMode[task + 1] as number); mode++) {
        if (fits[mode] === 0) continue;
        let cost = (length[mode] as number) * ofMinutes + (work[mode] as number) * ofWork;
        for (let s = 0; s < stocks; s++) cost += (ofStock[s] as number) * (drawn[mode * stocks + s] as number);
        cost *= 0.7 + random.below(60) / 100;
        if (cost >= least) continue;
        least = cost;
        modes[task] = mode;
      }
    }
  }

  /** Gives one to four tasks any mode. */
  change(modes: Int32Array): void {
    const { random, fits } = this;
    for (let k = 0; k < MOST_CHANGED && (k === 0 || random.percent(50)); k++) {
      const task = random.below(modes.length);
      const mode = this.anyMode(task);
      if (fits[mode] === 1) modes[task] = mode;
    }
  }

  /** By how much the list overdraws the stocks, in shares of them. */
  excess(modes: Int32Array): number {
    const { used, given } = this;
    const { stocks, drawn } = given.draws;
    used.fill(0);
    for (const mode of modes)
      for (let s = 0; s < stocks; s++) used[s] = (used[s] as number) + (drawn[mode * stocks + s] as number);
    return this.over();
  }

  private over(): number {
    const { used, unit, given } = this;
    const { stock } = given.draws;
    let over = 0;
    for (let s = 0; s < used.length; s++)
      over += Math.max(0, (used[s] as number) - (stock[s] as number)) * (unit[s] as number);
    return over;
  }

  /**
   * Gives tasks thriftier modes until the stocks reach, or too many draws were in vain.
   *
   * @param slack minutes that each task may last longer
   */
  mend(modes: Int32Array, slack: Int32Array): void {
    const { random, fits } = this;
    const count = modes.length;
    let over = this.excess(modes);
    for (let round = 0; over > 0 && round < 2 * count; round++) {
      let bestTask = -1;
      let bestMode = -1;
      let least = Infinity;
      for (let k = 0; k < DRAWS; k++) {
        const task = random.below(count);
        const mode = this.anyMode(task);
        if (mode === modes[task] || fits[mode] === 0) continue;
        const saved = this.saved(modes[task] as number, mode);
        if (saved <= 0) continue;
        const cost = this.harm(modes[task] as number, mode, slack[task] as number, count) / saved;
        if (cost >= least) continue;
        least = cost;
        bestTask = task;
        bestMode = mode;
      }
      if (bestTask < 0) continue;
      this.swap(modes, bestTask, bestMode);
      over = this.over();
    }
  }

  /** How much less the stocks are overdrawn when a mode is taken in place of another, in shares of them. */
  private saved(from: number, to: number): number {
    const { used, unit, given } = this;
    const { stocks, stock, drawn } = given.draws;
    let saved = 0;
    for (let s = 0; s < stocks; s++) {
      const over = (used[s] as number) - (stock[s] as number);
      const then = over + (drawn[to * stocks + s] as number) - (drawn[from * stocks + s] as number);
      saved += (Math.max(0, over) - Math.max(0, then)) * (unit[s] as number);
    }
    return saved;
  }

  private harm(from: number, to: number, slack: number, count: number): number {
    const { work, given } = this;
    const { length } = given.modes;
    const minutes = Math.max(0, (length[to] as number) - (length[from] as number) - slack);
    const more = Math.max(0, (work[to] as number) - (work[from] as number));
    return minutes + more * count * WORK + LEAST_HARM;
  }

  /** Spends what the stocks have left on modes that are shorter or lighter, one draw a task. */
  fill(modes: Int32Array): void {
    const { random, fits, work, used, given } = this;
    const { length } = given.modes;
    const { stocks, stock, drawn } = given.draws;
    if (this.excess(modes) > 0) return;
    const count = modes.length;
    const from = random.below(count);
    for (let k = 0; k < count; k++) {
      const task = (from + k) % count;
      const now = modes[task] as number;
      const mode = this.anyMode(task);
      if (mode === now || fits[mode] === 0) continue;
      const minutes = (length[mode] as number) - (length[now] as number);
      const more = (work[mode] as number) - (work[now] as number);
      if (minutes > 0 || more > 0 || (minutes === 0 && more === 0)) continue;
      let enough = true;
      for (let s = 0; enough && s < stocks; s++)
        enough =
          (used[s] as number) - (drawn[now * stocks + s] as number) + (drawn[mode * stocks + s] as number) <=
          (stock[s] as number);
      if (enough) this.swap(modes, task, mode);
    }
  }

  private swap(modes: Int32Array, task: number, mode: number): void {
    const { used, given } = this;
    const { stocks, drawn } = given.draws;
    const now = modes[task] as number;
    for (let s = 0; s < stocks; s++)
      used[s] = (used[s] as number) - (drawn[now * stocks + s] as number) + (drawn[mode * stocks + s] as number);
    modes[task] = mode;
  }

  private anyMode(task: number): number {
    const { firstMode } = this.given.modes;
    const first = firstMode[task] as number;
    return first + this.random.below((firstMode[task + 1] as number) - first);
  }
}
