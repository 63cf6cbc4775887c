/**
 * Why no plan can exist, in the asker's requirements: a set of them that clashes, made minimal by leaving each out in turn.
 *
 * Every lag with a requirement holds only under that requirement's selector; all selectors are assumed, and the assumptions that fail
 * together are the first set. A requirement stays when the rest without it can be planned, or when that could not be decided in the budget.
 *
 * Source: Eén & Sörensson (2003) for failed assumptions; deletion as in Chinneck & Dravnieks (1991).
 */
import { Model } from './model/model.ts';
import type { Clash } from '../outcome.ts';
import type { Lag, Problem } from '../problem.ts';

const CONFLICTS = 20_000;

/**
 * @param problem a problem without a plan
 * @param work most work units to spend
 * @returns the clash; `requirements` is empty when the problem fails without any of them
 */
export function explainClash(problem: Problem, work: number, shouldStop: (() => boolean) | undefined): Clash {
  const model = new Model(problem, true, false);
  const names = new Map([...model.selectors].map(([name, literal]) => [literal, name]));
  let core: number[] = [...names.keys()];
  if (model.tooLarge)
    return describe(
      problem,
      core.map((literal) => names.get(literal)!),
    );
  const refutes = (literals: readonly number[]): number[] | null => {
    const limit = model.core.work + Math.max(work, 5_000_000);
    const verdict = model.core.solve(literals, model.branching, CONFLICTS, limit, shouldStop);
    return verdict === 'refuted' ? [...model.core.failed] : null;
  };
  core = refutes(core) ?? core;
  for (const literal of [...core]) {
    if (!core.includes(literal)) continue;
    const smaller = refutes(core.filter((other) => other !== literal));
    if (smaller !== null) core = core.filter((other) => smaller.includes(other));
  }
  return describe(
    problem,
    core.map((literal) => names.get(literal)!),
  );
}

function describe(problem: Problem, found: readonly string[]): Clash {
  const requirements = [...found].sort();
  const lags = problem.lags.filter((lag) => lag.requirement === undefined || requirements.includes(lag.requirement));
  const tasks = [
    ...new Set(
      lags
        .filter((lag) => lag.requirement !== undefined)
        .flatMap((lag) => [lag.from, lag.to].flatMap((point) => (point === 'origin' ? [] : [point.task]))),
    ),
  ];
  const kind = certificate(problem, lags);
  const reason = {
    cycle: 'the gaps form a cycle that no times can satisfy',
    horizon: 'a chain of gaps and work is longer than the horizon',
    capacity: 'work needs more of a resource than there ever is',
    exhausted: 'every way of placing the work was refuted by search',
  }[kind];
  return { kind, reason, tasks, requirements };
}

/** The simplest of the four certificates that holds for the lags given. */
function certificate(problem: Problem, lags: readonly Lag[]): Clash['kind'] {
  const chain = longestChain(problem, lags);
  if (chain !== null) return chain;
  const most = new Map(
    problem.resources.map((r) => [r.id, Math.max(r.capacity, ...(r.calendar ?? []).map((entry) => entry.capacity))]),
  );
  const tooMuch = problem.tasks.some(
    (task) =>
      (task.when ?? []).length === 0 &&
      task.modes.every((mode) => {
        if (mode === null || mode.shortest === 0) return false;
        const sums = new Map<string, number>();
        for (const use of mode.uses) sums.set(use.resource, (sums.get(use.resource) ?? 0) + use.amount);
        return [...sums].some(([id, amount]) => amount > (most.get(id) ?? 0));
      }),
  );
  return tooMuch ? 'capacity' : 'exhausted';
}

/** Cycle or horizon, when the unconditional gaps among sure tasks alone already fail. */
function longestChain(problem: Problem, lags: readonly Lag[]): 'cycle' | 'horizon' | null {
  const sure = new Map<string, number>();
  problem.tasks.forEach((task) => {
    if ((task.when ?? []).length === 0 && task.modes.every((mode) => mode !== null)) sure.set(task.id, sure.size);
  });
  const origin = 2 * sure.size;
  const node = (point: Lag['from']): number | undefined => {
    if (point === 'origin') return origin;
    const index = sure.get(point.task);
    return index === undefined ? undefined : 2 * index + (point.at === 'start' ? 0 : 1);
  };
  const arcs: [number, number, number][] = [];
  for (const task of problem.tasks) {
    const index = sure.get(task.id);
    if (index === undefined) continue;
    const modes = task.modes.filter((mode) => mode !== null);
    arcs.push([2 * index, 2 * index + 1, Math.min(...modes.map((mode) => mode.shortest))]);
    arcs.push([2 * index + 1, 2 * index, -Math.max(...modes.map((mode) => mode.longest))]);
  }
  for (const lag of lags) {
    const from = node(lag.from);
    const to = node(lag.to);
    if (from !== undefined && to !== undefined && (lag.if ?? []).length === 0) arcs.push([from, to, lag.least]);
  }
  const relax = (all: readonly [number, number, number][]): boolean => {
    const at = new Float64Array(origin + 1);
    for (let round = 0; round <= origin + 1; round++) {
      let moved = false;
      for (const [from, to, least] of all)
        if (at[from]! + least > at[to]!) {
          at[to] = at[from]! + least;
          moved = true;
        }
      if (!moved) return true;
    }
    return false;
  };
  // Nothing is before the session's first minute, so an end required too early is a cycle, too.
  for (let n = 0; n < origin; n++) arcs.push([origin, n, 0]);
  if (!relax(arcs)) return 'cycle';
  const within = [...arcs];
  for (let n = 0; n < origin; n++) within.push([n, origin, -problem.horizon]);
  return relax(within) ? null : 'horizon';
}
