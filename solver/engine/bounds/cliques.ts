/**
 * Cliques: tasks of which no two can overlap, whatever keeps them apart: a resource that cannot hold both, or a surely known order. They take
 * their minutes one after the other, though no single resource says so.
 *
 * Source: Carlier and Pinson (1989) for the bound of one machine; Brucker, Drexl, Möhring, Neumann, Pesch (1999) for its use on pairs that exclude
 * each other across resources.
 */
import type { CompiledMode } from '../compiled.ts';
import type { Store } from '../propagation/store.ts';
import { Claims } from './claims.ts';
import { longestPaths } from './longest-paths.ts';

/** No more cliques than this are kept, those of most work first, and none are looked for among more tasks. */
const MOST_CLIQUES = 30;
const MOST_TASKS = 200;
/** Smaller ones say nothing that propagation does not. */
const SMALLEST = 4;

export class Cliques {
  private readonly cliques: readonly (readonly number[])[];
  private readonly claims: Claims;
  /** One task at a time, summed over the minutes. */
  private readonly supply: Float64Array;

  /** @param store with nothing assumed in it: cliques are of what is surely there */
  constructor(
    store: Store,
    private readonly isOver: () => boolean,
  ) {
    this.claims = new Claims(store);
    this.supply = Float64Array.from({ length: store.compiled.horizon + 1 }, (_, t) => t);
    this.cliques = findCliques(store);
  }

  /** Whether the tasks of a clique surely need more time than there is, under the store's bounds. */
  overloaded(): boolean {
    for (const clique of this.cliques) {
      if (this.isOver()) return false;
      this.claims.clear();
      for (const task of clique) this.claims.add(task, 1);
      if (this.claims.exceed(this.supply)) return true;
    }
    return false;
  }
}

/** Cliques that cover every pair of present tasks kept apart by a resource, greedily grown. */
function findCliques(store: Store): number[][] {
  const { compiled } = store;
  const tasks: number[] = [];
  for (let task = 0; task < compiled.taskCount; task++)
    if (store.isPresent(task) && store.shortest(task) > 0) tasks.push(task);
  if (tasks.length > MOST_TASKS) return [];
  const n = tasks.length;
  const least = tasks.map((task) => leastUses(store, task));
  const capacity = compiled.problem.resources.map((_, resource) => {
    let most = 0;
    for (let t = 0; t < compiled.horizon; t++)
      most = Math.max(most, compiled.capacity[resource * compiled.horizon + t] as number);
    return most;
  });
  const excludes = new Uint8Array(n * n);
  const apart = new Uint8Array(n * n);
  for (let a = 0; a < n; a++) {
    const path = longestPaths(store, 2 * (tasks[a] as number) + 1);
    for (let b = 0; b < n; b++) {
      if (a === b) continue;
      if ((path[2 * (tasks[b] as number)] as number) >= 0) apart[a * n + b] = apart[b * n + a] = 1;
      const both = capacity.some((most, r) => (least[a]?.[r] ?? 0) + (least[b]?.[r] ?? 0) > most);
      if (both) excludes[a * n + b] = apart[a * n + b] = 1;
    }
  }
  const degree = tasks.map((_, a) => excludes.subarray(a * n, a * n + n).reduce((sum, edge) => sum + edge, 0));
  const order = tasks.map((_, a) => a).sort((a, b) => (degree[b] as number) - (degree[a] as number) || a - b);
  const covered = new Uint8Array(n * n);
  const cliques: number[][] = [];
  for (const a of order)
    for (const b of order) {
      if (excludes[a * n + b] === 0 || covered[a * n + b] === 1) continue;
      const clique = [a, b];
      // Members kept apart by resources first: an order alone is seen by propagation, too.
      for (const edges of [excludes, apart])
        for (const c of order) if (clique.every((d) => d !== c && edges[c * n + d] === 1)) clique.push(c);
      for (const c of clique) for (const d of clique) covered[c * n + d] = 1;
      if (clique.length >= SMALLEST) cliques.push(clique.map((c) => tasks[c] as number));
    }
  const work = (clique: readonly number[]): number => clique.reduce((sum, task) => sum + store.shortest(task), 0);
  return cliques.sort((a, b) => work(b) - work(a)).slice(0, MOST_CLIQUES);
}

/** By resource: the least that the task needs of it in any mode. */
function leastUses(store: Store, task: number): number[] {
  const { taskModes, modes, problem } = store.compiled;
  const least = problem.resources.map(() => Infinity);
  for (let k = taskModes.start[task] as number; k < (taskModes.start[task + 1] as number); k++) {
    const { uses } = modes[taskModes.items[k] as number] as CompiledMode;
    least.forEach((amount, resource) => {
      const used = uses.reduce((sum, use) => sum + (use.resource === resource ? use.amount : 0), 0);
      least[resource] = Math.min(amount, used);
    });
  }
  return least;
}
