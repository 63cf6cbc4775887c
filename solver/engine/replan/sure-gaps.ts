/** The gaps of a running plan that hold whatever is chosen: a cheap proof where they contradict each other, and a bound on the finish. */
import type { OrderArc } from '../explain/plan-order.ts';
import { endNode, startNode } from '../explain/taken.ts';
import type { Clash } from '../outcome.ts';
import type { Literal, Point, Problem } from '../problem.ts';
import type { Contradiction } from './let-go.ts';
import type { Settled } from './settled.ts';

/**
 * @returns arcs between points of tasks that are surely there: shortest and longest lengths, and lags under no condition that is still
 *   open. Node and lag positions are those of the settled problem
 */
export function sureGaps({ problem, decided }: Settled): readonly OrderArc[] {
  const options = new Map(problem.choices.map(({ id }, index) => [id, decided[index] ?? null]));
  /** True: surely holds; false: surely not, or still open. */
  const holds = (literals: readonly Literal[] | undefined): boolean =>
    (literals ?? []).every(({ choice, options: some }) => {
      const option = options.get(choice) ?? null;
      return option !== null && some.includes(option);
    });
  const nodes = new Map<string, number>();
  const arcs: OrderArc[] = [];
  problem.tasks.forEach((task, index) => {
    const option = task.choice === undefined ? 0 : (options.get(task.choice) ?? null);
    const modes = option === null ? task.modes : [task.modes[option] ?? null];
    if (!holds(task.when) || modes.some((mode) => mode === null)) return;
    nodes.set(task.id, index);
    const why = { kind: 'length', task: task.id } as const;
    const [from, to] = [startNode(index), endNode(index)];
    arcs.push(
      { from, to, least: Math.min(...modes.map((mode) => mode!.shortest)), why },
      { from: to, to: from, least: -Math.max(...modes.map((mode) => mode!.longest)), why },
      { from: to, to: 0, least: -problem.horizon, why: { kind: 'horizon' } },
    );
  });
  const node = (point: Point): number => {
    if (point === 'origin') return 0;
    const task = nodes.get(point.task);
    return task === undefined ? -1 : point.at === 'start' ? startNode(task) : endNode(task);
  };
  problem.lags.forEach(({ from, to, least, if: literals, requirement }, lag) => {
    const [a, b] = [node(from), node(to)];
    if (a < 0 || b < 0 || a === b || !holds(literals)) return;
    const named = requirement === undefined ? {} : { requirement };
    arcs.push({ from: a, to: b, least, why: { kind: 'lag', lag, ...named } });
  });
  return arcs;
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
