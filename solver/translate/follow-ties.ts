/** Times of tasks that a plan does not show, from their ties to those it does: `b = a + gap` is a pair of lags. */
import type { Lag, Point, Problem } from '../engine/problem.ts';
import type { Shown } from './plan-to-solution.ts';

type End = Point & { readonly task: string };

interface Tie {
  readonly a: End;
  readonly b: End;
  readonly gap: number;
}

const nameOf = (point: Point): string => (point === 'origin' ? 'origin' : `${point.at} ${point.task}`);

/** Pairs of lags that leave one length only, under the options shown. */
function tiesOf(problem: Problem, shown: Shown): readonly Tie[] {
  const holds = (lag: Lag): boolean =>
    (lag.if ?? []).every((literal) => literal.options.includes(shown.options.get(literal.choice) ?? -1));
  const least = new Map<string, number>();
  const key = (from: Point, to: Point): string => `${nameOf(from)} → ${nameOf(to)}`;
  const held = problem.lags.filter((lag) => lag.from !== 'origin' && lag.to !== 'origin' && holds(lag));
  for (const lag of held) {
    const name = key(lag.from, lag.to);
    least.set(name, Math.max(lag.least, least.get(name) ?? -Infinity));
  }
  return held.flatMap(({ from, to, least: gap }): Tie[] =>
    least.get(key(to, from)) === -gap ? [{ a: from as End, b: to as End, gap }] : [],
  );
}

/** Adds to the intervals shown those that ties determine. */
export function followTies(problem: Problem, shown: Shown): void {
  const times = new Map<string, number>();
  for (const [task, { start, end }] of shown.intervals) {
    times.set(`start ${task}`, start);
    times.set(`end ${task}`, end);
  }
  const ties = tiesOf(problem, shown);
  for (let changed = true; changed;) {
    changed = false;
    const tell = (point: End, time: number): void => {
      if (times.has(nameOf(point))) return;
      times.set(nameOf(point), time);
      changed = true;
    };
    for (const { a, b, gap } of ties) {
      const [from, to] = [times.get(nameOf(a)), times.get(nameOf(b))];
      if (from !== undefined && to === undefined) tell(b, from + gap);
      if (to !== undefined && from === undefined) tell(a, to - gap);
    }
    for (const { id, choice, modes } of problem.tasks) {
      const mode = modes[choice === undefined ? 0 : (shown.options.get(choice) ?? 0)] ?? null;
      const [start, end] = [times.get(`start ${id}`), times.get(`end ${id}`)];
      if (start !== undefined && end !== undefined) shown.intervals.set(id, { start, end });
      else if (mode !== null && mode.shortest === mode.longest) {
        if (start !== undefined) tell({ task: id, at: 'end' }, start + mode.shortest);
        if (end !== undefined) tell({ task: id, at: 'start' }, end - mode.shortest);
      }
    }
  }
}
