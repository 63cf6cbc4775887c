/**
 * Complete enumeration of tiny scheduling problems: every option of every choice, every start and length of every task.
 * Branches are cut only where what is already placed breaks a rule for good, or is already no better than the best found;
 * what is left is judged by the plain check.
 */
import type { Lag, Mode, Point, Problem } from '../../solver/engine/problem.ts';
import type { Solution } from '../../solver/engine/outcome.ts';
import { faultsOf, holds, modesTaken, plainTierValues } from './plain-check.ts';

export type BruteForce =
  | { readonly kind: 'optimal'; readonly values: readonly number[]; readonly solution: Solution }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'unfinished' };

type Placed = ({ readonly start: number; readonly end: number } | null)[];
type Best = { readonly values: readonly number[]; readonly solution: Solution };

/**
 * The lexicographically least tier values of a tiny problem.
 *
 * @param problem at most about 5 tasks within 12 minutes; costs must not be negative
 * @param nodes most placements to try before giving up
 * @returns the values with a solution that has them; `infeasible` where there is none; `unfinished` past `nodes`
 */
export function bruteForce(problem: Problem, nodes = 5_000_000): BruteForce {
  let best: Best | null = null;
  let left = nodes;
  for (const choices of everyCombination(problem.choices.map((choice) => choice.options.length))) {
    if (problem.forbidden.some((literals) => holds(problem, choices, literals))) continue;
    const branch = openBranch(problem, choices);
    const descend = (depth: number): void => {
      if (best !== null || depth === branch.order.length) {
        const values = plainTierValues(problem, { choices, tasks: branch.placed });
        // A tier never falls when a task is added, so what is placed already tells a least value.
        if (best !== null && !lexicographicallyLess(values, best.values)) return;
        if (depth === branch.order.length) {
          const solution = { choices, tasks: [...branch.placed] };
          if (faultsOf(problem, solution).length === 0) best = { values, solution };
          return;
        }
      }
      const task = branch.order[depth] as number;
      const { shortest, longest } = branch.modes[task] as Mode;
      for (let start = 0; start + shortest <= problem.horizon; start += 1) {
        for (let end = start + shortest; end <= Math.min(problem.horizon, start + longest); end += 1) {
          left -= 1;
          if (left < 0) break;
          if (!branch.place(task, start, end)) continue;
          descend(depth + 1);
          branch.lift(task);
        }
      }
    };
    descend(0);
  }
  if (left < 0) return { kind: 'unfinished' };
  // The closure above assigns `best`, which the compiler does not follow.
  const found = best as Best | null;
  return found === null ? { kind: 'infeasible' } : { kind: 'optimal', ...found };
}

/** Every solution of a tiny problem, or the first `most` of them; null past `nodes` placements. */
export function everySolution(problem: Problem, most = 5_000, nodes = 300_000): readonly Solution[] | null {
  const found: Solution[] = [];
  let left = nodes;
  for (const choices of everyCombination(problem.choices.map((choice) => choice.options.length))) {
    if (problem.forbidden.some((literals) => holds(problem, choices, literals))) continue;
    const branch = openBranch(problem, choices);
    const descend = (depth: number): void => {
      if (depth === branch.order.length) {
        const solution = { choices, tasks: [...branch.placed] };
        if (faultsOf(problem, solution).length === 0) found.push(solution);
        return;
      }
      const task = branch.order[depth] as number;
      const { shortest, longest } = branch.modes[task] as Mode;
      for (let start = 0; start + shortest <= problem.horizon; start += 1)
        for (let end = start + shortest; end <= Math.min(problem.horizon, start + longest); end += 1) {
          left -= 1;
          if (left < 0 || found.length >= most) return;
          if (!branch.place(task, start, end)) continue;
          descend(depth + 1);
          branch.lift(task);
        }
    };
    descend(0);
  }
  return left < 0 ? null : found;
}

function* everyCombination(sizes: readonly number[]): Generator<number[]> {
  const total = sizes.reduce((product, size) => product * size, 1);
  for (let code = 0; code < total; code += 1) {
    let rest = code;
    yield sizes.map((size) => {
      const taken = rest % size;
      rest = Math.floor(rest / size);
      return taken;
    });
  }
}

/** True when `a` comes before `b` at the first place where they differ. */
export function lexicographicallyLess(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i += 1) {
    const difference = (a[i] ?? 0) - (b[i] ?? 0);
    if (difference !== 0) return difference < 0;
  }
  return false;
}

interface Branch {
  readonly modes: readonly (Mode | null)[];
  /** Present tasks: those under a total and those that clean first, then those with most lags. */
  readonly order: readonly number[];
  readonly placed: Placed;
  /** Places a task and says true, unless that breaks a rule for good together with those placed before. */
  readonly place: (task: number, start: number, end: number) => boolean;
  readonly lift: (task: number) => void;
}

/** The rest of the search under one combination of options, with ids turned into numbers once. */
function openBranch(problem: Problem, choices: readonly number[]): Branch {
  const modes = modesTaken(problem, choices);
  const placed: Placed = problem.tasks.map(() => null);
  const number = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const lagsOf: Lag[][] = problem.tasks.map(() => []);
  for (const lag of problem.lags) {
    if (!holds(problem, choices, lag.if)) continue;
    for (const point of [lag.from, lag.to]) if (point !== 'origin') lagsOf[number.get(point.task) ?? -1]?.push(lag);
  }
  const at = (point: Point): number | null =>
    point === 'origin' ? 0 : (placed[number.get(point.task) ?? -1]?.[point.at] ?? null);
  const lagsHold = (task: number): boolean =>
    lagsOf[task]?.every((lag) => {
      const from = at(lag.from);
      const to = at(lag.to);
      return from === null || to === null || to - from >= lag.least;
    }) === true;
  const room = openRoom(problem, modes, placed);
  const rules = [
    lagsHold,
    (task: number) => gapsHold(problem, modes, placed, task),
    openTotals(problem, choices, modes, placed),
    openReservoirs(problem, choices, modes, placed),
    () => soilMayHold(modes, placed),
  ];
  const lift = (task: number): void => {
    room.take(task, -1);
    placed[task] = null;
  };
  const first = (task: number): number =>
    (problem.totals.some((total) => total.tasks.includes(problem.tasks[task]?.id ?? '')) ? 200 : 0) +
    (cleans(modes[task] ?? null) ? 100 : 0) +
    (lagsOf[task]?.length ?? 0);
  return {
    modes,
    order: problem.tasks
      .map((_, index) => index)
      .filter((index) => modes[index] !== null)
      .sort((a, b) => first(b) - first(a)),
    placed,
    place: (task, start, end) => {
      placed[task] = { start, end };
      const enough = room.take(task, 1);
      if (enough && rules.every((rule) => rule(task))) return true;
      lift(task);
      return false;
    },
    lift,
  };
}

/** What is free of every resource, minute by minute. `take` removes `sign` times a placed task's amounts; true where that was there. */
function openRoom(
  problem: Problem,
  modes: readonly (Mode | null)[],
  placed: Placed,
): { readonly take: (task: number, sign: number) => boolean } {
  const room = new Map(
    problem.resources.map((resource) => [
      resource.id,
      Array.from({ length: problem.horizon }, (_, minute) => {
        const entry = resource.calendar?.find(({ from, until }) => from <= minute && minute < until);
        return entry?.capacity ?? resource.capacity;
      }),
    ]),
  );
  return {
    take: (task, sign) => {
      const { start, end } = placed[task] as { start: number; end: number };
      let enough = true;
      for (const use of modes[task]?.uses ?? []) {
        const free = room.get(use.resource) as number[];
        for (let minute = start; minute < end; minute += 1) {
          free[minute] = (free[minute] as number) - sign * use.amount;
          if ((free[minute] as number) < 0) enough = false;
        }
      }
      return enough;
    },
  };
}

function gapsHold(problem: Problem, modes: readonly (Mode | null)[], placed: Placed, task: number): boolean {
  const mine = placed[task];
  const need = modes[task]?.state;
  if (!mine || !need) return true;
  const gap = problem.states.find(({ id }) => id === need.state)?.gap ?? [];
  return placed.every((theirs, other) => {
    const state = modes[other]?.state;
    if (!theirs || other === task || state?.state !== need.state) return true;
    const forth = gap[state.class]?.[need.class] ?? null;
    const back = gap[need.class]?.[state.class] ?? null;
    return forth === null || back === null || mine.start >= theirs.end + forth || theirs.start >= mine.end + back;
  });
}

/** False where the lengths placed and the lengths still open cannot sum to a total. */
function openTotals(
  problem: Problem,
  choices: readonly number[],
  modes: readonly (Mode | null)[],
  placed: Placed,
): () => boolean {
  const totals = problem.totals
    .filter((total) => holds(problem, choices, total.if))
    .map(({ tasks, total }) => ({
      total,
      pieces: tasks.map((id) => problem.tasks.findIndex((task) => task.id === id)).filter((task) => modes[task]),
    }));
  return () =>
    totals.every(({ total, pieces }) => {
      let least = 0;
      let most = 0;
      for (const task of pieces) {
        const interval = placed[task];
        least += interval ? interval.end - interval.start : (modes[task]?.shortest ?? 0);
        most += interval ? interval.end - interval.start : (modes[task]?.longest ?? 0);
      }
      return least <= total && total <= most;
    });
}

/** False where a level is out of its range whenever the events still open happen. */
function openReservoirs(
  problem: Problem,
  choices: readonly number[],
  modes: readonly (Mode | null)[],
  placed: Placed,
): () => boolean {
  const reservoirs = problem.reservoirs.map((reservoir) => ({
    initial: reservoir.initial,
    capacity: reservoir.capacity ?? Infinity,
    events: reservoir.events
      .filter((event) => holds(problem, choices, event.if))
      .map(({ point, amount }) => ({
        task: problem.tasks.findIndex((task) => task.id === point.task),
        at: point.at as 'start' | 'end',
        amount,
      }))
      .filter(({ task }) => modes[task] !== null),
  }));
  const change = new Int32Array(problem.horizon + 1);
  return () =>
    reservoirs.every(({ initial, capacity, events }) => {
      change.fill(0);
      let gain = 0;
      let loss = 0;
      for (const { task, at, amount } of events) {
        const interval = placed[task];
        if (interval) change[interval[at]] = (change[interval[at]] ?? 0) + amount;
        else if (amount > 0) gain += amount;
        else loss += amount;
      }
      let level = initial;
      for (const amount of change) {
        level += amount;
        if (level + gain < 0 || level + loss > capacity) return false;
      }
      return true;
    });
}

function cleans(mode: Mode | null): boolean {
  return mode?.uses.some((use) => use.cleans === true) === true;
}

/** False where two placed uses clash, all cleaning is placed, and none lies between. */
function soilMayHold(modes: readonly (Mode | null)[], placed: Placed): boolean {
  if (modes.some((mode, task) => cleans(mode) && !placed[task])) return true;
  return placed.every((before, u) =>
    placed.every((after, v) => {
      if (!before || !after || u === v || after.end <= before.start) return true;
      return (modes[u]?.uses ?? []).every((left) => {
        if (!left.leaves) return true;
        const { resource, leaves } = left;
        const meets = modes[v]?.uses.some(
          (use) => use.resource === resource && use.avoids?.some((soil) => leaves.includes(soil)),
        );
        if (meets !== true) return true;
        return placed.some(
          (between, c) =>
            between &&
            modes[c]?.uses.some((use) => use.resource === resource && use.cleans === true) &&
            between.start >= before.end &&
            between.end <= after.start,
        );
      });
    }),
  );
}
