/**
 * Starts and ends of tasks as variables with offsets.
 *
 * Work of fixed length has one variable for both ends. Points tied rigidly (a least gap both ways, w and −w, without condition, between
 * tasks that are present together) share one variable, the group's earliest point. An absent task's variable is pinned low, so that it
 * asks for no decision.
 */
import type { Point, Problem } from '../../problem.ts';
import type { Conditions } from './conditions.ts';
import type { Core } from '../core.ts';

/** The value of a variable plus an offset. */
export interface Place {
  readonly x: number;
  readonly offset: number;
}

/** A least gap between two places that holds without condition, for the bounds and orders known before search. */
export interface SureGap {
  readonly from: number;
  readonly to: number;
  readonly least: number;
}

export class Points {
  readonly starts: Place[] = [];
  readonly ends: Place[] = [];
  /** By task: true when present; by task and mode: true when present in this mode (always false for a null mode). */
  readonly present: number[] = [];
  readonly inMode: number[][] = [];
  readonly taskIndex = new Map<string, number>();
  /** The variables behind the points, each with whether its tasks are surely present. */
  readonly variables: number[] = [];
  /** False when a sure point has no time left: a chain longer than the horizon or a cycle of gaps. */
  feasible = true;

  private readonly core: Core;
  private readonly problem: Problem;
  private readonly conditions: Conditions;
  private readonly parent: number[] = [];
  private readonly shift: number[] = [];

  constructor(
    core: Core,
    problem: Problem,
    conditions: Conditions,
    isHard: (requirement: string | undefined) => boolean,
  ) {
    this.core = core;
    this.problem = problem;
    this.conditions = conditions;
    problem.tasks.forEach((task, t) => this.taskIndex.set(task.id, t));
    this.presences();
    this.merge(isHard);
    this.declare(isHard);
  }

  private presences(): void {
    for (const task of this.problem.tasks) {
      const when = this.conditions.literalsOf(task.when);
      const { alwaysTrue, alwaysFalse } = this.core.trail;
      if (task.choice === undefined) {
        const literal = this.conditions.all(when);
        this.present.push(literal);
        this.inMode.push(task.modes.map((mode) => (mode === null ? alwaysFalse : literal)));
        continue;
      }
      const choice = this.conditions.choiceIndex(task.choice);
      const open = task.modes.flatMap((mode, m) => (mode === null ? [] : [m]));
      this.present.push(this.conditions.all([...when, this.conditions.among(choice, open)]));
      this.inMode.push(
        task.modes.map((mode, m) =>
          mode === null
            ? alwaysFalse
            : this.conditions.all([...when, this.conditions.options[choice]![m] ?? alwaysTrue]),
        ),
      );
    }
  }

  /** True when present in one of the modes. */
  inModes(t: number, modes: readonly number[]): number {
    const task = this.problem.tasks[t]!;
    if (task.choice === undefined) return modes.length === 0 ? this.core.trail.alwaysFalse : this.present[t]!;
    const open = task.modes.flatMap((mode, m) => (mode === null ? [] : [m]));
    if (open.every((m) => modes.includes(m))) return this.present[t]!;
    const choice = this.conditions.choiceIndex(task.choice);
    return this.conditions.all([...this.conditions.literalsOf(task.when), this.conditions.among(choice, modes)]);
  }

  /** Whether a task may be present with no length. */
  mayVanish(t: number): boolean {
    return this.problem.tasks[t]!.modes.some((mode) => mode !== null && mode.shortest === 0);
  }

  /** Nodes: 2t for the start of task t, 2t + 1 for its end. */
  private node(point: Point): number {
    if (point === 'origin') return -1;
    return 2 * this.taskIndex.get(point.task)! + (point.at === 'start' ? 0 : 1);
  }

  place(point: Point): Place {
    if (point === 'origin') return { x: 0, offset: -1 };
    const t = this.taskIndex.get(point.task)!;
    return point.at === 'start' ? this.starts[t]! : this.ends[t]!;
  }

  /** Presence of the task of a point. */
  presence(point: Point): number {
    return point === 'origin' ? this.core.trail.alwaysTrue : this.present[this.taskIndex.get(point.task)!]!;
  }

  private find(node: number): number {
    let sum = 0;
    let n = node;
    while (this.parent[n] !== n) {
      sum += this.shift[n]!;
      n = this.parent[n]!;
    }
    this.parent[node] = n;
    this.shift[node] = n === node ? 0 : sum;
    return n;
  }

  /** Ties `to = from + gap`; says nothing when the two are tied already (the arcs will tell a contradiction). */
  private tie(from: number, to: number, gap: number): void {
    const a = this.find(from);
    const b = this.find(to);
    if (a === b) return;
    this.parent[b] = a;
    this.shift[b] = this.shift[from]! + gap - this.shift[to]!;
  }

  private merge(isHard: (requirement: string | undefined) => boolean): void {
    const { problem } = this;
    for (let n = 0; n < 2 * problem.tasks.length; n++) {
      this.parent.push(n);
      this.shift.push(0);
    }
    problem.tasks.forEach((task, t) => {
      const modes = task.modes.filter((mode) => mode !== null);
      const length = modes[0]?.shortest ?? 0;
      if (length <= problem.horizon && modes.every((mode) => mode.shortest === length && mode.longest === length))
        this.tie(2 * t, 2 * t + 1, length);
    });
    const widest = new Map<string, number>();
    for (const lag of problem.lags) {
      if ((lag.if ?? []).length > 0 || !isHard(lag.requirement)) continue;
      const from = this.node(lag.from);
      const to = this.node(lag.to);
      if (from < 0 || to < 0 || this.present[from >> 1] !== this.present[to >> 1]) continue;
      const key = `${from} ${to}`;
      widest.set(key, Math.max(widest.get(key) ?? -Infinity, lag.least));
    }
    for (const [key, least] of widest) {
      const [from, to] = key.split(' ').map(Number) as [number, number];
      if (widest.get(`${to} ${from}`) === -least && Math.abs(least) <= problem.horizon) this.tie(from, to, least);
    }
  }

  private declare(isHard: (requirement: string | undefined) => boolean): void {
    const { problem, core } = this;
    const count = 2 * problem.tasks.length;
    const lowest = new Map<number, number>();
    const highest = new Map<number, number>();
    for (let n = 0; n < count; n++) {
      const root = this.find(n);
      lowest.set(root, Math.min(lowest.get(root) ?? Infinity, this.shift[n]!));
      highest.set(root, Math.max(highest.get(root) ?? -Infinity, this.shift[n]!));
    }
    const [early, late] = this.window(isHard, lowest, highest);
    const variableOf = new Map<number, number>();
    for (let n = 0; n < count; n++) {
      const root = this.find(n);
      let x = variableOf.get(root);
      const present = this.present[n >> 1]!;
      if (x === undefined) {
        const lo = early.get(root)!;
        const hi = late.get(root)!;
        if (lo > hi) {
          core.clause(this.conditions.not(present));
          if (present === core.trail.alwaysTrue) this.feasible = false;
        }
        x = core.trail.variable(lo, Math.max(lo, hi));
        variableOf.set(root, x);
        this.variables.push(x);
        if (present !== core.trail.alwaysTrue) core.clause(present, core.trail.atMost(x, lo));
      }
      const place = { x, offset: this.shift[n]! - lowest.get(root)! };
      (n % 2 === 0 ? this.starts : this.ends).push(place);
    }
  }

  /** Earliest and latest value of each group's first point by the gaps that hold without condition among sure tasks. */
  private window(
    isHard: (requirement: string | undefined) => boolean,
    lowest: ReadonlyMap<number, number>,
    highest: ReadonlyMap<number, number>,
  ): [Map<number, number>, Map<number, number>] {
    const { problem } = this;
    const early = new Map<number, number>();
    const late = new Map<number, number>();
    for (const [root, low] of lowest) {
      early.set(root, 0);
      late.set(root, problem.horizon - (highest.get(root)! - low));
    }
    const gaps: SureGap[] = [];
    const sure = (n: number): boolean => n < 0 || this.present[n >> 1] === this.core.trail.alwaysTrue;
    const offset = (n: number): number => this.shift[n]! - lowest.get(this.find(n))!;
    const add = (from: number, to: number, least: number): void => {
      if (!sure(from) || !sure(to)) return;
      if (from < 0 && to < 0) {
        if (least > 0) this.feasible = false;
      } else if (from < 0) {
        const root = this.find(to);
        early.set(root, Math.max(early.get(root)!, least - offset(to)));
      } else if (to < 0) {
        const root = this.find(from);
        late.set(root, Math.min(late.get(root)!, -least - offset(from)));
      } else gaps.push({ from: this.find(from), to: this.find(to), least: least - offset(to) + offset(from) });
    };
    for (const lag of problem.lags)
      if ((lag.if ?? []).length === 0 && isHard(lag.requirement))
        add(this.node(lag.from), this.node(lag.to), lag.least);
    problem.tasks.forEach((task, t) => {
      const modes = task.modes.filter((mode) => mode !== null);
      add(2 * t, 2 * t + 1, Math.min(...modes.map((mode) => mode.shortest)));
      add(2 * t + 1, 2 * t, -Math.max(...modes.map((mode) => mode.longest)));
    });
    // Relaxed until nothing moves; still moving after as many rounds as there are groups means a cycle.
    let moved = true;
    for (let round = 0; moved && this.feasible; round++) {
      moved = false;
      if (round > lowest.size) this.feasible = false;
      for (const gap of gaps) {
        if (early.get(gap.from)! + gap.least > early.get(gap.to)!) {
          early.set(gap.to, early.get(gap.from)! + gap.least);
          moved = true;
        }
        if (late.get(gap.to)! - gap.least < late.get(gap.from)!) {
          late.set(gap.from, late.get(gap.to)! - gap.least);
          moved = true;
        }
        if (early.get(gap.to)! > late.get(gap.to)! || early.get(gap.from)! > late.get(gap.from)!) {
          this.feasible = false;
          break;
        }
      }
    }
    for (const root of early.keys()) {
      // Values of no use (an absent task's, or of a problem already refuted) stay in a small range.
      if (early.get(root)! > problem.horizon || late.get(root)! < 0) {
        if (this.present[root >> 1] === this.core.trail.alwaysTrue) this.feasible = false;
        early.set(root, 1);
        late.set(root, 0);
      }
    }
    return [early, late];
  }
}
