/** Times of tasks that a plan does not show, from their ties to those it does: `b = a + gap` is a pair of lags. */
import type { Lag, Point, Problem } from '../engine/problem.ts';
import type { Shown } from './plan-to-solution.ts';

type End = Exclude<Point, 'origin'>;

const UNKNOWN = -(2 ** 31);

/** Points are numbered as nodes: `2t` is the start and `2t + 1` the end of the problem's task t. */
interface Tie {
  readonly a: number;
  readonly b: number;
  readonly gap: number;
}

/** Pairs of lags that leave one length only, under the options shown. */
function tiesOf(problem: Problem, shown: Shown, nodeOf: (point: End) => number): readonly Tie[] {
  const holds = (lag: Lag): boolean =>
    (lag.if ?? []).every((literal) => literal.options.includes(shown.options.get(literal.choice) ?? -1));
  const nodes = 2 * problem.tasks.length;
  const held: Tie[] = [];
  const least = new Map<number, number>();
  for (const lag of problem.lags) {
    if (lag.from === 'origin' || lag.to === 'origin' || !holds(lag)) continue;
    const tie = { a: nodeOf(lag.from), b: nodeOf(lag.to), gap: lag.least };
    held.push(tie);
    const key = tie.a * nodes + tie.b;
    least.set(key, Math.max(tie.gap, least.get(key) ?? -Infinity));
  }
  return held.filter(({ a, b, gap }) => least.get(b * nodes + a) === -gap);
}

/** Adds to the intervals shown those that ties determine. */
export function followTies(problem: Problem, shown: Shown): void {
  const { tasks } = problem;
  const position = new Map(tasks.map(({ id }, index) => [id, index]));
  const nodeOf = ({ task, at }: End): number => 2 * position.get(task)! + (at === 'start' ? 0 : 1);
  const times = new Int32Array(2 * tasks.length).fill(UNKNOWN);
  for (const [task, { start, end }] of shown.intervals) {
    const index = position.get(task);
    if (index !== undefined) [times[2 * index], times[2 * index + 1]] = [start, end];
  }
  const modes = tasks.map(
    ({ choice, modes: all }) => all[choice === undefined ? 0 : (shown.options.get(choice) ?? 0)] ?? null,
  );
  const ties = tiesOf(problem, shown, nodeOf);
  for (let changed = true; changed;) {
    changed = false;
    const tell = (node: number, time: number): void => {
      if (times[node] !== UNKNOWN) return;
      times[node] = time;
      changed = true;
    };
    for (const { a, b, gap } of ties) {
      const [from, to] = [times[a]!, times[b]!];
      if (from !== UNKNOWN && to === UNKNOWN) tell(b, from + gap);
      if (to !== UNKNOWN && from === UNKNOWN) tell(a, to - gap);
    }
    modes.forEach((mode, task) => {
      if (mode === null || mode.shortest !== mode.longest) return;
      const [start, end] = [times[2 * task]!, times[2 * task + 1]!];
      if (start !== UNKNOWN && end === UNKNOWN) tell(2 * task + 1, start + mode.shortest);
      if (end !== UNKNOWN && start === UNKNOWN) tell(2 * task, end - mode.shortest);
    });
  }
  tasks.forEach(({ id }, task) => {
    const [start, end] = [times[2 * task]!, times[2 * task + 1]!];
    if (start !== UNKNOWN && end !== UNKNOWN) shown.intervals.set(id, { start, end });
  });
}
