/**
 * Says whether a solution keeps every promise of a problem, by the definitions of `problem.ts` read one by one.
 *
 * Nothing here is shared with the search: no compiled form, no propagation, plain lists and loops, so that a fault of the
 * search cannot hide itself. It is slow (quadratic and worse) and meant for whole plans, not for inner loops.
 */
import type { Lag, Literal, Mode, Point, Problem, Use } from './problem.ts';
import type { Solution } from './outcome.ts';

interface Placed {
  readonly id: string;
  readonly mode: Mode;
  readonly start: number;
  readonly end: number;
}

/**
 * Checks a solution against every constraint of its problem.
 *
 * @param problem a problem that `validateProblem` accepts
 * @param solution one option a choice and one interval a task, in the order of the problem's lists
 * @returns one sentence for each broken constraint, naming the ids; empty when the solution is valid
 */
export function verifySolution(problem: Problem, solution: Solution): string[] {
  const faults: string[] = [];
  if (solution.choices.length !== problem.choices.length)
    faults.push(`${solution.choices.length} options given for ${problem.choices.length} choices`);
  if (solution.tasks.length !== problem.tasks.length)
    faults.push(`${solution.tasks.length} intervals given for ${problem.tasks.length} tasks`);
  if (faults.length > 0) return faults;

  const taken = new Map<string, number>();
  problem.choices.forEach((choice, index) => {
    const option = solution.choices[index] ?? -1;
    if (!Number.isInteger(option) || option < 0 || option >= choice.options.length)
      faults.push(`choice ${choice.id} takes option ${option} of ${choice.options.length}`);
    taken.set(choice.id, option);
  });
  if (faults.length > 0) return faults;

  const holds = (literals: readonly Literal[] | undefined): boolean =>
    (literals ?? []).every((literal) => literal.options.includes(taken.get(literal.choice) ?? -1));
  const placed = placeTasks(problem, solution, taken, holds, faults);
  const at = (point: Point): number | undefined => {
    if (point === 'origin') return 0;
    const task = placed.get(point.task);
    return task === undefined ? undefined : point.at === 'start' ? task.start : task.end;
  };

  checkCapacities(problem, placed, faults);
  checkStates(problem, placed, faults);
  checkSoil(placed, faults);
  checkReservoirs(problem, at, holds, faults);
  checkLags(problem, solution, placed, holds, faults);
  problem.forbidden.forEach((conjunction, index) => {
    if (holds(conjunction)) faults.push(`forbidden conjunction ${index} holds`);
  });
  for (const total of problem.totals) {
    if (!holds(total.if)) continue;
    let sum = 0;
    for (const id of total.tasks) {
      const task = placed.get(id);
      if (task !== undefined) sum += task.end - task.start;
    }
    if (sum !== total.total) faults.push(`lengths of ${total.tasks.join(', ')} sum to ${sum}, not ${total.total}`);
  }
  return faults;
}

function placeTasks(
  problem: Problem,
  solution: Solution,
  taken: ReadonlyMap<string, number>,
  holds: (literals: readonly Literal[] | undefined) => boolean,
  faults: string[],
): Map<string, Placed> {
  const placed = new Map<string, Placed>();
  problem.tasks.forEach((task, index) => {
    const interval = solution.tasks[index] ?? null;
    const option = task.choice === undefined ? 0 : (taken.get(task.choice) ?? -1);
    const mode = holds(task.when) ? (task.modes[option] ?? null) : null;
    if (mode === null) {
      if (interval !== null) faults.push(`task ${task.id} is placed but absent under the choices taken`);
      return;
    }
    if (interval === null) {
      faults.push(`task ${task.id} is present under the choices taken but not placed`);
      return;
    }
    const { start, end } = interval;
    if (!Number.isInteger(start) || !Number.isInteger(end)) faults.push(`task ${task.id} is not at whole minutes`);
    if (start < 0) faults.push(`task ${task.id} starts at ${start}, before the origin`);
    if (end > problem.horizon) faults.push(`task ${task.id} ends at ${end}, after the horizon ${problem.horizon}`);
    if (end - start < mode.shortest || end - start > mode.longest)
      faults.push(`task ${task.id} lasts ${end - start}, outside ${mode.shortest}–${mode.longest}`);
    placed.set(task.id, { id: task.id, mode, start, end });
  });
  return placed;
}

/** By lag: its two tasks by position, −1 the origin, −2 no such task. Read once a problem, for whole plans of one are checked by the hundred. */
const ends = new WeakMap<Problem, Int32Array>();

function endsOf(problem: Problem): Int32Array {
  const known = ends.get(problem);
  if (known !== undefined) return known;
  const position = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const of = (point: Point): number => (point === 'origin' ? -1 : (position.get(point.task) ?? -2));
  const read = new Int32Array(2 * problem.lags.length);
  problem.lags.forEach((lag, index) => {
    read[2 * index] = of(lag.from);
    read[2 * index + 1] = of(lag.to);
  });
  ends.set(problem, read);
  return read;
}

function checkLags(
  problem: Problem,
  solution: Solution,
  placed: ReadonlyMap<string, Placed>,
  holds: (literals: readonly Literal[] | undefined) => boolean,
  faults: string[],
): void {
  const tasks = endsOf(problem);
  const present = problem.tasks.map(({ id }, index) => (placed.has(id) ? solution.tasks[index]! : null));
  for (let index = 0; index < problem.lags.length; index++) {
    const lag = problem.lags[index]!;
    const from = timeOf(lag.from, present[tasks[2 * index]!]);
    const to = timeOf(lag.to, present[tasks[2 * index + 1]!]);
    if (from === null || to === null || to - from >= lag.least || !holds(lag.if)) continue;
    faults.push(`${lagName(lag)} is ${to - from}, least is ${lag.least}`);
  }
}

function timeOf(
  point: Point,
  interval: { readonly start: number; readonly end: number } | null | undefined,
): number | null {
  if (point === 'origin') return 0;
  return interval == null ? null : interval[point.at];
}

function checkCapacities(problem: Problem, placed: ReadonlyMap<string, Placed>, faults: string[]): void {
  const onResource = new Map<string, { readonly task: Placed; readonly amount: number }[]>();
  for (const task of placed.values())
    for (const { resource, amount } of task.mode.uses) {
      const uses = onResource.get(resource);
      if (uses === undefined) onResource.set(resource, [{ task, amount }]);
      else uses.push({ task, amount });
    }
  for (const resource of problem.resources) {
    const uses = onResource.get(resource.id);
    if (uses === undefined) continue;
    const inUse = new Int32Array(problem.horizon + 1);
    const calendar = resource.calendar ?? [];
    let last = 0;
    for (const { task, amount } of uses) {
      const end = Math.min(task.end, problem.horizon);
      last = Math.max(last, end);
      for (let t = Math.max(0, task.start); t < end; t++) inUse[t]! += amount;
    }
    // A capacity may be as low as 0, and no lower: where nothing is used there is nothing to ask.
    for (let t = 0; t < last; t++) {
      const entry = calendar.length === 0 ? undefined : calendar.find((item) => item.from <= t && t < item.until);
      const capacity = entry === undefined ? resource.capacity : entry.capacity;
      const amount = inUse[t]!;
      if (amount > capacity) {
        faults.push(`resource ${resource.id} is used by ${amount} of ${capacity} at minute ${t}`);
        break;
      }
    }
  }
}

function checkStates(problem: Problem, placed: ReadonlyMap<string, Placed>, faults: string[]): void {
  for (const state of problem.states) {
    const users = [...placed.values()].filter((task) => task.mode.state?.state === state.id);
    users.forEach((a, index) => {
      for (const b of users.slice(index + 1)) {
        const classA = a.mode.state?.class ?? 0;
        const classB = b.mode.state?.class ?? 0;
        const forth = state.gap[classA]?.[classB] ?? null;
        const back = state.gap[classB]?.[classA] ?? null;
        if (forth === null || back === null) continue;
        if (b.start >= a.end + forth || a.start >= b.end + back) continue;
        faults.push(`tasks ${a.id} and ${b.id} need state ${state.id} in two classes without the gap between`);
      }
    });
  }
}

function checkSoil(placed: ReadonlyMap<string, Placed>, faults: string[]): void {
  const byResource = new Map<string, { task: Placed; use: Use }[]>();
  for (const task of placed.values())
    for (const use of task.mode.uses) {
      if (use.leaves === undefined && use.avoids === undefined && use.cleans !== true) continue;
      const list = byResource.get(use.resource);
      if (list === undefined) byResource.set(use.resource, [{ task, use }]);
      else list.push({ task, use });
    }
  for (const [resource, uses] of byResource) {
    const cleaners = uses.filter((item) => item.use.cleans === true);
    for (const u of uses) {
      const leaves = u.use.leaves ?? [];
      if (leaves.length === 0) continue;
      for (const v of uses) {
        if (u.task === v.task || v.use.avoids === undefined) continue;
        const { avoids } = v.use;
        const met = leaves.find((mark) => avoids.includes(mark));
        if (met === undefined || v.task.end <= u.task.start) continue;
        if (cleaners.some((c) => c.task.start >= u.task.end && c.task.end <= v.task.start)) continue;
        faults.push(`task ${v.task.id} meets ${met} left on ${resource} by ${u.task.id}`);
      }
    }
  }
}

function checkReservoirs(
  problem: Problem,
  at: (point: Point) => number | undefined,
  holds: (literals: readonly Literal[] | undefined) => boolean,
  faults: string[],
): void {
  for (const reservoir of problem.reservoirs) {
    const changes = new Map<number, number>([[0, 0]]);
    for (const event of reservoir.events) {
      const time = at(event.point);
      if (time === undefined || !holds(event.if)) continue;
      changes.set(time, (changes.get(time) ?? 0) + event.amount);
    }
    let level = reservoir.initial;
    for (const [time, change] of [...changes].sort((a, b) => a[0] - b[0])) {
      level += change;
      if (level < 0) faults.push(`reservoir ${reservoir.id} is at ${level} at minute ${time}`);
      if (reservoir.capacity !== undefined && level > reservoir.capacity)
        faults.push(`reservoir ${reservoir.id} is at ${level} of ${reservoir.capacity} at minute ${time}`);
    }
  }
}

function lagName(lag: Lag): string {
  const name = (point: Point): string => (point === 'origin' ? 'the origin' : `the ${point.at} of ${point.task}`);
  const why = lag.requirement === undefined ? '' : ` (${lag.requirement})`;
  return `lag from ${name(lag.from)} to ${name(lag.to)}${why}`;
}
