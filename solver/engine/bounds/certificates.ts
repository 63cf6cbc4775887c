/**
 * Certificates that no plan exists, each checkable by hand: a cycle of lags that asks for more time than it gives, a chain longer
 * than the horizon, a task that fits its resources in no mode, tasks that need more of a resource than there is all session.
 */
import type { CompiledMode } from '../compiled.ts';
import type { Clash } from '../outcome.ts';
import { Propagation } from '../propagation/propagation.ts';
import { Store } from '../propagation/store.ts';
import type { Workshop } from '../search/workshop.ts';
import { Energy } from './energy.ts';
import { sureEdges, type Edge } from './longest-paths.ts';

/** Looks for a certificate; null when none is found, which says nothing about the problem. */
export function findClash(workshop: Workshop): Clash | null {
  // Bounds that propagation has settled without a contradiction have no cycle to climb.
  if (workshop.consistent) return findMisfit(workshop, workshop.store);
  // A store of its own, in which nothing is concluded yet.
  const store = new Store(workshop.compiled);
  return findCycle(workshop, store) ?? findMisfit(workshop, store);
}

/** Looks for tasks that together need more of some resources than there is; dearer than `findClash`. */
export function findOverload(workshop: Workshop): Clash | null {
  const store = new Store(workshop.compiled);
  const { problem, structure } = workshop;
  const energy = new Energy(store, new Propagation(store, structure.block).timetable);
  const pool = energy.overloaded();
  if (pool < 0) return null;
  const names = energy.tasksOf(pool).map((task) => problem.tasks[task]?.id ?? '');
  const resources = (energy.pools[pool] ?? []).map((resource) => problem.resources[resource]?.id ?? '');
  return {
    kind: 'capacity',
    reason: `${names.join(', ')} together need more of ${resources.join(' and ')} than there is`,
    tasks: names,
    requirements: [],
  };
}

function findCycle(workshop: Workshop, store: Store): Clash | null {
  const { compiled } = workshop;
  // Lags are numbered as in the problem that search works on.
  const { problem } = compiled;
  const { origin, horizon, taskCount } = compiled;
  const edges = sureEdges(store);
  for (let task = 0; task < taskCount; task++) {
    if (!store.isPresent(task)) continue;
    edges.push({ from: origin, to: 2 * task, least: 0, lag: -1 });
    edges.push({ from: 2 * task + 1, to: origin, least: -horizon, lag: -2 });
  }
  const cycle = positiveCycle(edges, origin + 1);
  if (cycle === null) return null;
  const ascending = (numbers: number[]): number[] => [...new Set(numbers)].sort((a, b) => a - b);
  const tasks = ascending(cycle.flatMap((edge) => [edge.from >> 1, edge.to >> 1])).filter((task) => task < taskCount);
  const lags = ascending(cycle.map((edge) => edge.lag).filter((lag) => lag >= 0));
  const requirements = [...new Set(lags.flatMap((lag) => problem.lags[lag]?.requirement ?? []))];
  const excess = cycle.reduce((sum, edge) => sum + edge.least, 0);
  const names = tasks.map((task) => problem.tasks[task]?.id ?? '');
  // Without any gap it is the length of one task, which is cut at the horizon.
  const overHorizon = lags.length === 0 || cycle.some((edge) => edge.lag === -2);
  return overHorizon
    ? {
        kind: 'horizon',
        reason: `the chain over ${names.join(', ')} needs ${horizon + excess} minutes of ${horizon}`,
        tasks: names,
        requirements,
      }
    : {
        kind: 'cycle',
        reason: `the gaps around ${names.join(', ')} ask for ${excess} minutes more than they give`,
        tasks: names,
        requirements,
      };
}

/** A cycle of positive length (Bellman and Ford), null when there is none. */
function positiveCycle(edges: readonly Edge[], nodes: number): Edge[] | null {
  const distance = new Float64Array(nodes);
  const by: (Edge | undefined)[] = [];
  let last = -1;
  for (let round = 0; round <= nodes; round++) {
    last = -1;
    for (const edge of edges) {
      const reached = (distance[edge.from] as number) + edge.least;
      if (reached <= (distance[edge.to] as number)) continue;
      distance[edge.to] = reached;
      by[edge.to] = edge;
      last = edge.to;
    }
    if (last < 0) return null;
  }
  // Far enough back along the edges the walk is on a cycle.
  let node = last;
  for (let k = 0; k < nodes; k++) node = by[node]?.from ?? node;
  const cycle: Edge[] = [];
  for (let at = node; cycle.length === 0 || at !== node;) {
    const edge = by[at];
    if (edge === undefined || cycle.length > nodes) return null;
    cycle.push(edge);
    at = edge.from;
  }
  return cycle.reverse();
}

function findMisfit(workshop: Workshop, store: Store): Clash | null {
  const { problem, compiled } = workshop;
  const { taskModes, modes, taskCount, horizon, capacity } = compiled;
  for (let task = 0; task < taskCount; task++) {
    if (!store.isPresent(task)) continue;
    let why = '';
    let fits = false;
    for (let k = taskModes.start[task] as number; !fits && k < (taskModes.start[task + 1] as number); k++) {
      const mode = modes[taskModes.items[k] as number] as CompiledMode;
      const misfit = misfitOf(mode, capacity, horizon);
      if (misfit === null) fits = true;
      else why = `${misfit.amount} of ${problem.resources[misfit.resource]?.id ?? ''} for ${mode.shortest} minutes`;
    }
    if (fits) continue;
    const id = problem.tasks[task]?.id ?? '';
    return {
      kind: 'capacity',
      reason: `task ${id} fits in no mode; the last asks for ${why}`,
      tasks: [id],
      requirements: [],
    };
  }
  return null;
}

/** A use of the mode for which no stretch of its shortest length has the capacity; null when each alone has one. */
function misfitOf(
  mode: CompiledMode,
  capacity: Int32Array,
  horizon: number,
): { resource: number; amount: number } | null {
  for (const { resource, amount } of mode.uses) {
    if (amount === 0 || mode.shortest === 0) continue;
    let run = 0;
    let longest = 0;
    for (let t = 0; t < horizon; t++) {
      run = (capacity[resource * horizon + t] as number) >= amount ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    if (longest < mode.shortest) return { resource, amount };
  }
  return null;
}
