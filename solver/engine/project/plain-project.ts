/**
 * Recognises the classical project: tasks of fixed length that are all there, shortest lags without a cycle, resources with
 * capacities, least finish. Such problems get a scheme of their own that is far faster than propagation.
 */
import type { Compiled, CompiledMode } from '../compiled.ts';
import { emptyLists, packLists, type SparseLists } from '../sparse-lists.ts';

export interface PlainProject {
  readonly count: number;
  readonly horizon: number;
  readonly length: Int32Array;
  /** Earliest start that lags from the origin allow. */
  readonly release: Int32Array;
  /** Minutes from a task's start that the first tier counts for it; −1 where it does not. */
  readonly due: Int32Array;
  /** For each task those that must wait for it, and those it waits for; `…Lag` is from start to start. */
  readonly after: SparseLists;
  readonly afterLag: Int32Array;
  readonly before: SparseLists;
  readonly beforeLag: Int32Array;
  /** Uses of each task: resource and amount. */
  readonly uses: SparseLists;
  readonly amount: Int32Array;
  readonly resources: number;
  readonly capacity: Int32Array;
  /** Tasks in an order that respects all lags. */
  readonly topological: Int32Array;
}

/** The problem as a plain project, null when it is not one. */
export function asPlainProject(compiled: Compiled): PlainProject | null {
  const { taskCount, arcs, presence, taskModes, modes, origin, tiers, horizon } = compiled;
  const [first] = tiers;
  if (first?.kind !== 'latest' || first.terms.some((term) => term.minus)) return null;
  if (compiled.reservoirs.length > 0 || compiled.totals.length > 0 || compiled.forbidden.length > 0) return null;
  if (compiled.soilMarks.any || taskCount === 0) return null;
  const length = new Int32Array(taskCount);
  const uses = emptyLists(taskCount);
  const amount: number[][] = emptyLists(taskCount);
  for (let task = 0; task < taskCount; task++) {
    const only = taskModes.items[taskModes.start[task] as number];
    if (presence[task] !== 0 || (taskModes.start[task + 1] as number) - (taskModes.start[task] as number) !== 1)
      return null;
    const mode = modes[only as number] as CompiledMode;
    if (mode.shortest !== mode.longest || mode.state >= 0) return null;
    length[task] = mode.shortest;
    for (const use of mode.uses) {
      if (use.amount === 0 || mode.shortest === 0) continue;
      uses[task]?.push(use.resource);
      amount[task]?.push(use.amount);
    }
  }
  const offset = (node: number): number => ((node & 1) === 1 ? (length[node >> 1] as number) : 0);
  const release = new Int32Array(taskCount);
  const after = emptyLists(taskCount);
  const afterLag = emptyLists(taskCount);
  const before = emptyLists(taskCount);
  const beforeLag = emptyLists(taskCount);
  for (const arc of arcs) {
    if (arc.all !== 0 || arc.to === origin) return null;
    const to = arc.to >> 1;
    const lag = arc.least - offset(arc.to) + (arc.from === origin ? 0 : offset(arc.from));
    if (arc.from === origin) release[to] = Math.max(release[to] as number, lag);
    else if (arc.from >> 1 === to) {
      if (lag > 0) return null;
    } else {
      // Lists sorted by start must respect every lag.
      if (lag < 0) return null;
      after[arc.from >> 1]?.push(to);
      afterLag[arc.from >> 1]?.push(lag);
      before[to]?.push(arc.from >> 1);
      beforeLag[to]?.push(lag);
    }
  }
  const topological = inOrder(after, before);
  if (topological === null) return null;
  const due = new Int32Array(taskCount).fill(-1);
  for (const { node, plus } of first.terms) {
    const value = plus + offset(node);
    if (value < 0) return null;
    due[node >> 1] = Math.max(due[node >> 1] as number, value);
  }
  return {
    count: taskCount,
    horizon,
    length,
    release,
    due,
    after: packLists(after),
    afterLag: Int32Array.from(afterLag.flat()),
    before: packLists(before),
    beforeLag: Int32Array.from(beforeLag.flat()),
    uses: packLists(uses),
    amount: Int32Array.from(amount.flat()),
    resources: compiled.problem.resources.length,
    capacity: compiled.capacity,
    topological,
  };
}

/** Every task after all those it waits for; null when lags run in a circle. */
export function inOrder(
  after: readonly (readonly number[])[],
  before: readonly (readonly number[])[],
): Int32Array | null {
  const open = before.map((list) => list.length);
  const order: number[] = [];
  open.forEach((count, task) => {
    if (count === 0) order.push(task);
  });
  for (let k = 0; k < order.length; k++)
    for (const next of after[order[k] as number] ?? []) {
      open[next] = (open[next] as number) - 1;
      if (open[next] === 0) order.push(next);
    }
  return order.length === before.length ? Int32Array.from(order) : null;
}
