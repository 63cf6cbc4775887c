/** Longest paths over the lags and lengths that surely hold. */
import type { Store } from '../propagation/store.ts';

/** One step of the graph: `to − from ≥ least`; `lag` is the index of the lag it comes from, −1 for a length. */
export interface Edge {
  readonly from: number;
  readonly to: number;
  readonly least: number;
  readonly lag: number;
}

/** Lags whose conditions hold and lengths of tasks that are present, in the store as it is. */
export function sureEdges(store: Store): Edge[] {
  const { arcs, taskCount } = store.compiled;
  const edges: Edge[] = [];
  for (const arc of arcs)
    if (store.isTrue(arc.all)) edges.push({ from: arc.from, to: arc.to, least: arc.least, lag: arc.lag });
  for (let task = 0; task < taskCount; task++) {
    if (!store.isPresent(task)) continue;
    edges.push({ from: 2 * task, to: 2 * task + 1, least: store.shortest(task), lag: -1 });
    edges.push({ from: 2 * task + 1, to: 2 * task, least: -store.longest(task), lag: -1 });
  }
  return edges;
}

/**
 * Longest distances from a node, −Infinity where there is no path.
 *
 * The graph must have no cycle of positive length; the search ends after as many rounds as there are nodes in any case.
 */
export function longestPaths(store: Store, from: number): Float64Array {
  const edges = sureEdges(store);
  const nodes = store.compiled.origin + 1;
  const distance = new Float64Array(nodes).fill(-Infinity);
  distance[from] = 0;
  for (let round = 0, changed = true; changed && round < nodes; round++) {
    changed = false;
    for (const edge of edges) {
      const reached = (distance[edge.from] as number) + edge.least;
      if (reached <= (distance[edge.to] as number)) continue;
      distance[edge.to] = reached;
      changed = true;
    }
    store.work += edges.length >> 3;
  }
  return distance;
}
