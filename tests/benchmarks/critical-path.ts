import type { Problem } from '../../solver/engine/problem.ts';

/**
 * The longest chain of a problem by its lags and shortest lengths alone: a bound of the finish that every paper can compute.
 *
 * @returns minutes; `Infinity` where the lags run in a cycle that cannot hold
 */
export function criticalPath(problem: Problem): number {
  const shortest = new Map(
    problem.tasks.map((task) => [task.id, Math.min(...task.modes.flatMap((mode) => (mode ? [mode.shortest] : [])))]),
  );
  const longest = new Map(
    problem.tasks.map((task) => [task.id, Math.max(...task.modes.flatMap((mode) => (mode ? [mode.longest] : [])))]),
  );
  const at = new Map<string, number>([['origin', 0]]);
  const arcs: { from: string; to: string; least: number }[] = [];
  for (const { id } of problem.tasks) {
    at.set(`${id} start`, 0);
    at.set(`${id} end`, shortest.get(id) ?? 0);
    arcs.push({ from: `${id} start`, to: `${id} end`, least: shortest.get(id) ?? 0 });
    arcs.push({ from: `${id} end`, to: `${id} start`, least: -(longest.get(id) ?? 0) });
  }
  const name = (point: Problem['lags'][number]['from']): string =>
    point === 'origin' ? 'origin' : `${point.task} ${point.at}`;
  for (const lag of problem.lags) {
    if (lag.if === undefined) arcs.push({ from: name(lag.from), to: name(lag.to), least: lag.least });
  }
  for (let round = 0; round <= at.size; round += 1) {
    let moved = false;
    for (const { from, to, least } of arcs) {
      const reached = (at.get(from) ?? 0) + least;
      if (reached <= (at.get(to) ?? 0)) continue;
      if (to === 'origin') return Infinity;
      at.set(to, reached);
      moved = true;
    }
    if (!moved) return Math.max(...[...at.values()]);
  }
  return Infinity;
}
