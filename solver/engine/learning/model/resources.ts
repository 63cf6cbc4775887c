/**
 * Resources: a time-table each, orders for pairs that together exceed the capacity, and a time-table for each set of resources that
 * some task chooses among (two persons together are a resource of two), which sees work whose choice is still open.
 */
import { Disjunctive } from '../propagators/disjunctive.ts';
import { Timetable } from '../propagators/timetable.ts';
import type { TimetableTask } from '../propagators/timetable.ts';
import type { Problem, Resource } from '../../problem.ts';
import type { Core } from '../core.ts';
import type { Orders } from './orders.ts';
import type { Points } from './points.ts';

/** Above this many pairs of one resource no orders are made; its time-table is complete without them. */
const MOST_PAIRS = 20_000;

interface Amounts {
  readonly task: number;
  /** By mode: the amount used, 0 where none or where the mode has no length. */
  readonly byMode: readonly number[];
  /** The same, 0 where the mode may have no length. */
  readonly sureByMode: readonly number[];
}

interface Layer {
  readonly amount: number;
  readonly literal: number;
}

export class Resources {
  private readonly core: Core;
  private readonly problem: Problem;
  private readonly points: Points;
  private readonly orders: Orders;
  private readonly amounts = new Map<string, Amounts[]>();
  /** Exclusive resources as (task, literal) lists, for disjunctive propagation. */
  /** Resources alone, and the sets that tasks choose among. */
  readonly groups: ReadonlySet<string>[] = [];
  private readonly exclusive: { readonly task: number; readonly literal: number; readonly length: number }[][] = [];

  constructor(core: Core, problem: Problem, points: Points, orders: Orders) {
    this.core = core;
    this.problem = problem;
    this.points = points;
    this.orders = orders;
    for (const resource of problem.resources) this.amounts.set(resource.id, this.amountsOf(new Set([resource.id])));
    for (const resource of problem.resources) this.one(resource);
    this.sets();
  }

  /** Amounts of every task on a set of resources together. */
  private amountsOf(resources: ReadonlySet<string>): Amounts[] {
    const list: Amounts[] = [];
    this.problem.tasks.forEach((task, t) => {
      const byMode = task.modes.map((mode) => {
        if (mode === null || mode.longest === 0) return 0;
        let sum = 0;
        for (const use of mode.uses) if (resources.has(use.resource)) sum += use.amount;
        return sum;
      });
      if (byMode.every((amount) => amount === 0)) return;
      const sureByMode = byMode.map((amount, m) => ((task.modes[m]?.shortest ?? 0) > 0 ? amount : 0));
      list.push({ task: t, byMode, sureByMode });
    });
    return list;
  }

  /** Amounts that add up, each under the literal of the modes that use at least so much. */
  private layers(task: number, byMode: readonly number[]): Layer[] {
    const levels = [...new Set(byMode)].filter((amount) => amount > 0).sort((a, b) => a - b);
    return levels.map((level, i) => ({
      amount: level - (levels[i - 1] ?? 0),
      literal: this.points.inModes(
        task,
        byMode.flatMap((amount, m) => (amount >= level ? [m] : [])),
      ),
    }));
  }

  private capacityOf(resource: Resource): Int32Array {
    const capacity = new Int32Array(this.problem.horizon).fill(resource.capacity);
    for (const { from, until, capacity: then } of resource.calendar ?? [])
      capacity.fill(then, Math.max(0, from), Math.max(0, Math.min(until, this.problem.horizon)));
    return capacity;
  }

  private one(resource: Resource): void {
    const amounts = this.amounts.get(resource.id)!;
    if (amounts.length === 0) return;
    const { core, points } = this;
    const capacity = this.capacityOf(resource);
    const most = capacity.reduce((a, b) => Math.max(a, b), 0);
    const { negation } = core.trail;
    const sure = amounts.map((item) => this.layers(item.task, item.sureByMode));
    for (const layers of sure) {
      let sum = 0;
      for (const layer of layers) {
        sum += layer.amount;
        if (sum > most) core.clause(layer.literal ^ negation);
      }
    }
    const allPairs = this.pairs(amounts, sure, most);
    const steady = capacity.every((c) => c === most);
    const alwaysLong = amounts.every((item) => item.byMode.every((amount, m) => amount === item.sureByMode[m]));
    if (allPairs && amounts.length > 2)
      this.exclusive.push(
        amounts.map(({ task, sureByMode }, k) => ({
          task,
          literal: sure[k]![0]!.literal,
          length: Math.min(
            ...this.problem.tasks[task]!.modes.map((mode, m) => (sureByMode[m]! > 0 ? mode!.shortest : Infinity)),
          ),
        })),
      );
    if (allPairs && steady && alwaysLong) return;
    const tasks = amounts.map((item): TimetableTask => ({
      start: points.starts[item.task]!.x,
      startOffset: points.starts[item.task]!.offset,
      end: points.ends[item.task]!.x,
      endOffset: points.ends[item.task]!.offset,
      layers: this.layers(item.task, item.byMode).filter((layer) => layer.literal !== core.trail.alwaysFalse),
    }));
    core.post(new Timetable(core.trail, capacity, tasks));
  }

  /** Orders for the pairs that together exceed the capacity; true when that is every pair. */
  private pairs(amounts: readonly Amounts[], sure: readonly Layer[][], most: number): boolean {
    const n = amounts.length;
    if ((n * (n - 1)) / 2 > MOST_PAIRS) return false;
    let every = sure.every((layers) => layers.length > 0);
    for (let i = 0; i < n; i++)
      for (let j = i + 1; j < n; j++) {
        if ((sure[i]![0]?.amount ?? 0) + (sure[j]![0]?.amount ?? 0) <= most) every = false;
        // Least layers of j for each layer of i; a larger layer of i that needs no smaller one of j says nothing new.
        let before = sure[j]!.length;
        let ofI = 0;
        for (const layer of sure[i]!) {
          ofI += layer.amount;
          let ofJ = 0;
          const k = sure[j]!.findIndex((other) => (ofJ += other.amount) + ofI > most);
          if (k < 0 || k >= before) continue;
          before = k;
          this.orders.conflict(amounts[i]!.task, amounts[j]!.task, [layer.literal, sure[j]![k]!.literal]);
        }
      }
    return every;
  }

  /** Posts what exclusive resources say about sets. Call when the orders are closed. */
  close(): void {
    const { core, points, orders } = this;
    const seen = new Set<string>();
    for (const list of this.exclusive) {
      const key = list.map((item) => `${item.task} ${item.literal}`).join(',');
      if (seen.has(key)) continue;
      seen.add(key);
      const order = new Int32Array(list.length ** 2).fill(core.trail.alwaysFalse);
      list.forEach((a, i) =>
        list.forEach((b, j) => {
          if (i !== j) order[i * list.length + j] = orders.known(a.task, b.task);
        }),
      );
      const tasks = list.map((item) => ({
        start: points.starts[item.task]!.x,
        startOffset: points.starts[item.task]!.offset,
        end: points.ends[item.task]!.x,
        endOffset: points.ends[item.task]!.offset,
        length: item.length,
        literal: item.literal,
      }));
      core.post(new Disjunctive(core.trail, tasks, order));
    }
  }

  /** Sets of resources that some task chooses among, one resource a mode. */
  private sets(): void {
    const seen = new Map<string, ReadonlySet<string>>();
    for (const task of this.problem.tasks) {
      const modes = task.modes.filter((mode) => mode !== null);
      if (modes.length < 2) continue;
      const used = modes.map((mode) => new Set(mode.uses.filter((use) => use.amount > 0).map((use) => use.resource)));
      const common = [...used[0]!].filter((r) => used.every((set) => set.has(r)));
      const own = used.map((set) => [...set].filter((r) => !common.includes(r)));
      for (const kinds of this.alternatives(own)) seen.set([...kinds].sort().join('\u0000'), kinds);
    }
    this.groups.push(...this.problem.resources.map((resource) => new Set([resource.id])), ...seen.values());
    for (const set of seen.values()) {
      const amounts = this.amountsOf(set);
      const capacity = new Int32Array(this.problem.horizon);
      for (const resource of this.problem.resources) {
        if (!set.has(resource.id)) continue;
        this.capacityOf(resource).forEach((c, t) => (capacity[t] = Math.min(2 ** 30, capacity[t]! + c)));
      }
      const { core, points } = this;
      core.post(
        new Timetable(
          core.trail,
          capacity,
          amounts.map((item) => ({
            start: points.starts[item.task]!.x,
            startOffset: points.starts[item.task]!.offset,
            end: points.ends[item.task]!.x,
            endOffset: points.ends[item.task]!.offset,
            layers: this.layers(item.task, item.byMode),
          })),
        ),
      );
    }
  }

  /** When every mode has the same number of resources of its own: the k-th of each, together, for each k. */
  private alternatives(own: readonly (readonly string[])[]): Set<string>[] {
    const width = own[0]!.length;
    if (width === 0 || own.some((list) => list.length !== width)) return [];
    const sets = Array.from({ length: width }, (_, k) => new Set(own.map((list) => list[k]!)));
    return sets.filter((set) => set.size > 1);
  }
}
