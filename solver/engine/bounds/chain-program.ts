/**
 * A multi-mode project as a linear program: least tier where each task takes shares of its modes, chains of lags take the time that
 * these shares last, stocks and energies bound them. What a minute of a chain, a unit of a stock and a unit of work are worth beside each
 * other are its row prices.
 *
 * Variables: the share of each mode but the shortest of its task, the start of each task, the tier. Stocks and energies are written as shares
 * of what there is.
 *
 * Sources: Kelley (1961), Critical-path planning and scheduling, for the trade of time for cost on chains; Pritsker, Watters, Wolfe (1969).
 */
import type { ModeLags } from '../project/mode-parts.ts';
import type { ModeProject } from '../project/mode-project.ts';
import { rowPrices } from '../../linear/row-prices.ts';

/** Worth of lags (by entry of the project's `after`), ends and starts that the tier counts, releases (by task), stocks and resources, all ≥ 0. */
export interface ChainPrices {
  readonly lag: Float64Array;
  readonly end: Float64Array;
  readonly start: Float64Array;
  readonly release: Float64Array;
  readonly stock: Float64Array;
  readonly resource: Float64Array;
}

/** Cost of what costs nothing. */
const SMALL = 1e-5;

export function chainPrices(given: ModeProject): ChainPrices {
  return new ChainProgram(given).prices();
}

class ChainProgram {
  private readonly rows: Float64Array[] = [];
  private readonly limits: number[] = [];
  private readonly shortest: Int32Array;
  /** By mode its variable, −1 for the shortest of its task. */
  private readonly column: Int32Array;
  private readonly starts: number;
  private readonly tier: number;

  constructor(private readonly given: ModeProject) {
    const { project } = given;
    const { firstMode, length } = given.modes;
    this.shortest = new Int32Array(project.count);
    this.column = new Int32Array(length.length).fill(-1);
    let variables = 0;
    for (let task = 0; task < project.count; task++) {
      let shortest = firstMode[task]!;
      for (let mode = shortest; mode < firstMode[task + 1]!; mode++)
        if (length[mode]! < length[shortest]!) shortest = mode;
      this.shortest[task] = shortest;
      for (let mode = firstMode[task]!; mode < firstMode[task + 1]!; mode++)
        if (mode !== shortest) this.column[mode] = variables++;
    }
    this.starts = variables;
    this.tier = variables + project.count;
  }

  prices(): ChainPrices {
    const { given, rows, limits, starts, tier } = this;
    const { most } = given;
    const { count } = given.project;
    const { after, release, fromEnd, least } = given.lags;
    const { dueOfStart, dueOfEnd } = given.dues;
    const { stocks, stock, drawn } = given.draws;
    const tasks = Array.from({ length: count }, (_, task) => task);
    for (const task of tasks) this.addOthers(this.row(1), task, () => 1);
    const lag = new Int32Array(after.items.length).fill(-1);
    const kept = tellingLags(given.lags);
    for (const task of tasks)
      for (let a = after.start[task]!; a < after.start[task + 1]!; a++)
        if (kept[a] === 1) lag[a] = this.addGap(task, fromEnd[a]! === 1, least[a]!, starts + after.items[a]!);
    const end = tasks.map((task) => (dueOfEnd[task]! < 0 ? -1 : this.addGap(task, true, dueOfEnd[task]!, tier)));
    const start = tasks.map((task) => (dueOfStart[task]! < 0 ? -1 : this.addGap(task, false, dueOfStart[task]!, tier)));
    const released = tasks.map((task) => {
      if (release[task] === 0) return -1;
      this.row(-release[task]!)[starts + task] = -1;
      return rows.length - 1;
    });
    const drawing = Array.from({ length: stocks }, (_, s) =>
      this.addShares(1, stock[s]!, (mode) => drawn[mode * stocks + s]!, tasks),
    );
    const ending = tasks.filter((task) => dueOfEnd[task]! >= 0);
    const working = Array.from(most, (capacity, r) => {
      const index = this.addShares(0, capacity, (mode, task) => given.work(task, mode, r), ending);
      rows[index]![tier] = capacity === 0 ? 0 : -1;
      return index;
    });

    const variables = tier + 1;
    // Costs that differ a little break ties.
    const costs = Float64Array.from({ length: variables }, (_, j) => SMALL * (1 + ((j * 7919) % 101) / 101));
    costs[tier] = 1;
    const coefficients = new Float64Array(rows.length * variables);
    rows.forEach((row, i) => coefficients.set(row, i * variables));
    const all = { variables, rows: rows.length, coefficients, limits: Float64Array.from(limits), costs };
    const prices = rowPrices(all);
    const of = (index: number): number => (index < 0 ? 0 : prices[index]!);
    return {
      lag: Float64Array.from(lag, of),
      end: Float64Array.from(end, of),
      start: Float64Array.from(start, of),
      release: Float64Array.from(released, of),
      stock: Float64Array.from(drawing, (index, s) => of(index) / Math.max(1, stock[s]!)),
      resource: Float64Array.from(working, (index, r) => of(index) / Math.max(1, most[r]!)),
    };
  }

  private row(limit: number): Float64Array {
    const row = new Float64Array(this.tier + 1);
    this.rows.push(row);
    this.limits.push(limit);
    return row;
  }

  private addOthers(row: Float64Array, task: number, value: (mode: number) => number): void {
    const { firstMode } = this.given.modes;
    for (let mode = firstMode[task]!; mode < firstMode[task + 1]!; mode++)
      if (this.column[mode]! >= 0) row[this.column[mode]!] = value(mode);
  }

  /** to ≥ start of the task + its length, where that counts, + least. @returns the row's index */
  private addGap(task: number, fromEnd: boolean, least: number, to: number): number {
    const { length } = this.given.modes;
    const shortest = length[this.shortest[task]!]!;
    const row = this.row(-least - (fromEnd ? shortest : 0));
    row[this.starts + task] = 1;
    row[to] = -1;
    if (fromEnd) this.addOthers(row, task, (mode) => length[mode]! - shortest);
    return this.rows.length - 1;
  }

  /** Σ amount of the modes taken ≤ limit × all, divided by all. @returns the row's index */
  private addShares(
    limit: number,
    all: number,
    amount: (mode: number, task: number) => number,
    tasks: readonly number[],
  ): number {
    const scale = 1 / Math.max(1, all);
    const row = this.row(0);
    let room = limit * all;
    for (const task of tasks) {
      const base = amount(this.shortest[task]!, task);
      room -= base;
      this.addOthers(row, task, (mode) => (amount(mode, task) - base) * scale);
    }
    this.limits[this.limits.length - 1] = room * scale;
    return this.rows.length - 1;
  }
}

/** By entry of `after`: 0 where a chain over another task between says as much. */
function tellingLags({ after, fromEnd, least, topological }: ModeLags): Uint8Array {
  const count = topological.length;
  const reach = Array.from({ length: count }, () => new Uint8Array(count));
  const telling = new Uint8Array(after.items.length).fill(1);
  for (let k = count - 1; k >= 0; k--) {
    const task = topological[k]!;
    const own = reach[task]!;
    const from = after.start[task]!;
    const until = after.start[task + 1]!;
    for (let a = from; a < until; a++) {
      own[after.items[a]!] = 1;
      reach[after.items[a]!]!.forEach((reached, other) => (own[other]! |= reached));
    }
    for (let a = from; a < until; a++)
      for (let b = from; b < until; b++)
        if (reach[after.items[b]!]![after.items[a]!] === 1 && least[b]! >= least[a]! && fromEnd[b]! >= fromEnd[a]!)
          telling[a] = 0;
  }
  return telling;
}
