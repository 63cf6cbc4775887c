/** The gaps of a running plan that hold whatever is chosen: a cheap proof where they contradict each other, and a bound on the finish. */
import { byNumber, endNode, startNode } from '../explain/by-number.ts';
import type { OrderArc } from '../explain/plan-order.ts';
import type { Clash } from '../outcome.ts';
import type { Mode, Problem } from '../problem.ts';
import type { Contradiction } from './let-go.ts';
import type { Settled } from './settled.ts';

/**
 * @returns arcs between points of tasks that are surely there: shortest and longest lengths, and lags under no condition that is still
 *   open. Node and lag positions are those of the settled problem
 */
export function sureGaps({ problem, decided }: Settled): readonly OrderArc[] {
  const numbers = byNumber(problem);
  /** True: surely holds; false: surely not, or still open. */
  const holds = (choice: number, options: readonly number[]): boolean => {
    const option = decided[choice] ?? null;
    return option !== null && options.includes(option);
  };
  const there = new Uint8Array(problem.tasks.length);
  const arcs: OrderArc[] = [];
  problem.tasks.forEach((task, index) => {
    for (const { choice, options } of task.when ?? []) if (!holds(numbers.choices.get(choice)!, options)) return;
    const option = task.choice === undefined ? 0 : (decided[numbers.choices.get(task.choice)!] ?? null);
    const range = option === null ? rangeOf(task.modes) : rangeOf([task.modes[option] ?? null]);
    if (range === null) return;
    there[index] = 1;
    const why = { kind: 'length', task: task.id } as const;
    const [from, to] = [startNode(index), endNode(index)];
    arcs.push(
      { from, to, least: range.shortest, why },
      { from: to, to: from, least: -range.longest, why },
      { from: to, to: 0, least: -problem.horizon, why: { kind: 'horizon' } },
    );
  });
  const isThere = (node: number): boolean => node === 0 || (node > 0 && there[(node - 1) >> 1] === 1);
  for (const lag of numbers.lags) {
    if (lag === null || !isThere(lag.arc.from) || !isThere(lag.arc.to)) continue;
    if (lag.if === null || lag.if.every(({ choice, options }) => holds(choice, options))) arcs.push(lag.arc);
  }
  return arcs;
}

/** Shortest and longest length in any mode; null where the task may be absent. */
function rangeOf(modes: readonly (Mode | null)[]): { readonly shortest: number; readonly longest: number } | null {
  let [shortest, longest] = [Infinity, -Infinity];
  for (const mode of modes) {
    if (mode === null) return null;
    shortest = Math.min(shortest, mode.shortest);
    longest = Math.max(longest, mode.longest);
  }
  return { shortest, longest };
}

/** The contradiction as the asker may read it. */
export function clashOf(problem: Problem, { arcs, excess }: Contradiction): Clash {
  const positions = new Set(
    arcs.flatMap(({ from, to }) => [from, to].flatMap((each) => (each === 0 ? [] : [(each - 1) >> 1]))),
  );
  const tasks = [...positions].sort((a, b) => a - b).map((task) => problem.tasks[task]!.id);
  const requirements = [
    ...new Set(
      arcs
        .flatMap(({ why }) => (why.kind === 'lag' ? [why.lag] : []))
        .sort((a, b) => a - b)
        .flatMap((lag) => problem.lags[lag]!.requirement ?? []),
    ),
  ];
  return arcs.some(({ why }) => why.kind === 'horizon')
    ? {
        kind: 'horizon',
        reason: `the chain over ${tasks.join(', ')} needs ${problem.horizon + excess} minutes of ${problem.horizon}`,
        tasks,
        requirements,
      }
    : {
        kind: 'cycle',
        reason: `the gaps around ${tasks.join(', ')} ask for ${excess} minutes more than they give`,
        tasks,
        requirements,
      };
}
