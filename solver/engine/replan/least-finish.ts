/** A bound on the finish of a running plan: what no way to go on can better, whatever is chosen. */
import { earliestTimes, type OrderArc } from '../explain/plan-order.ts';
import { endNode, startNode } from '../explain/taken.ts';
import type { Point } from '../problem.ts';
import { condition } from './condition.ts';
import type { Settled } from './settled.ts';

/**
 * No finish is earlier, by the gaps that hold whatever is chosen and the lengths.
 *
 * @param finish nodes of which the latest is the finish
 * @returns minutes; null where those gaps contradict each other, so that there is no way to go on at all
 */
export function leastFinish({ problem, decided }: Settled, finish: readonly number[]): number | null {
  const { problem: sure } = condition(problem, decided);
  const position = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const present = new Set(
    sure.tasks
      .filter(({ when, modes }) => when === undefined && modes.every((mode) => mode !== null))
      .map(({ id }) => id),
  );
  /** Node of a point; −1 where it is not surely there. */
  const node = (point: Point): number => {
    if (point === 'origin') return 0;
    if (!present.has(point.task)) return -1;
    const task = position.get(point.task)!;
    return point.at === 'start' ? startNode(task) : endNode(task);
  };
  const arcs: OrderArc[] = [];
  const times = new Int32Array(1 + 2 * problem.tasks.length).fill(-1);
  times[0] = 0;
  for (const task of sure.tasks) {
    if (!present.has(task.id)) continue;
    const [start, end] = [node({ task: task.id, at: 'start' }), node({ task: task.id, at: 'end' })];
    times[start] = times[end] = 0;
    const shortest = Math.min(...task.modes.map((mode) => mode!.shortest));
    const longest = Math.max(...task.modes.map((mode) => mode!.longest));
    arcs.push(
      { from: start, to: end, least: shortest, why: { kind: 'length', task: task.id } },
      { from: end, to: start, least: -longest, why: { kind: 'length', task: task.id } },
    );
  }
  sure.lags.forEach(({ from, to, least, if: literals }, lag) => {
    if (literals !== undefined || node(from) < 0 || node(to) < 0) return;
    arcs.push({ from: node(from), to: node(to), least, why: { kind: 'lag', lag } });
  });
  const earliest = earliestTimes({ nodes: times.length, arcs, times });
  if (earliest === null) return null;
  return finish.reduce((latest, each) => Math.max(latest, earliest[each]!), 0);
}
