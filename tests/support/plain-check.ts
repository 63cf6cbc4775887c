/**
 * The meaning of a scheduling problem, minute by minute and word by word as its format states it: slow, short, and
 * sharing nothing with the engine. Says what is wrong with a solution, and what its tiers are worth.
 */
import type { Literal, Mode, Point, Problem, Tier, Use } from '../../solver/engine/problem.ts';
import type { Solution } from '../../solver/engine/outcome.ts';

interface Interval {
  readonly start: number;
  readonly end: number;
}

/** True when every literal holds under the options taken. */
export function holds(problem: Problem, choices: readonly number[], literals: readonly Literal[] | undefined): boolean {
  return (literals ?? []).every((literal) => {
    const taken = choices[problem.choices.findIndex((choice) => choice.id === literal.choice)];
    return taken !== undefined && literal.options.includes(taken);
  });
}

/** The mode each task takes under the options taken, in the order of the problem's tasks; null for an absent task. */
export function modesTaken(problem: Problem, choices: readonly number[]): (Mode | null)[] {
  return problem.tasks.map((task) => {
    if (!holds(problem, choices, task.when)) return null;
    if (task.choice === undefined) return task.modes[0] ?? null;
    return task.modes[choices[problem.choices.findIndex((choice) => choice.id === task.choice)] ?? -1] ?? null;
  });
}

/**
 * Everything that is wrong with a solution, one sentence a fault; empty where it is a solution of the problem.
 *
 * @param problem the problem asked
 * @param solution one option a choice and one interval a task
 */
export function faultsOf(problem: Problem, solution: Solution): string[] {
  const faults: string[] = [];
  const { choices } = solution;
  const modes = modesTaken(problem, choices);
  problem.choices.forEach((choice, index) => {
    const taken = choices[index] ?? -1;
    if (!Number.isInteger(taken) || taken < 0 || taken >= choice.options.length)
      faults.push(`${choice.id}: no such option`);
  });
  problem.tasks.forEach((task, index) => {
    const mode = modes[index] ?? null;
    const interval = solution.tasks[index] ?? null;
    if ((mode === null) !== (interval === null))
      faults.push(`${task.id}: present and absent do not agree with its mode`);
    if (mode === null || interval === null) return;
    const { start, end } = interval;
    if (!Number.isInteger(start) || !Number.isInteger(end)) faults.push(`${task.id}: not whole minutes`);
    if (start < 0 || end > problem.horizon) faults.push(`${task.id}: outside the horizon`);
    if (end - start < mode.shortest || end - start > mode.longest) faults.push(`${task.id}: length ${end - start}`);
  });
  if (faults.length > 0) return faults;
  const when = (point: Point): number | null => timeOf(problem, solution, point);
  problem.lags.forEach((lag, index) => {
    const from = when(lag.from);
    const to = when(lag.to);
    if (from === null || to === null || !holds(problem, choices, lag.if)) return;
    if (to - from < lag.least) faults.push(`lag ${index}: ${to - from} < ${lag.least}`);
  });
  problem.forbidden.forEach((literals, index) => {
    if (holds(problem, choices, literals)) faults.push(`forbidden ${index}`);
  });
  problem.totals.forEach((total, index) => {
    if (!holds(problem, choices, total.if)) return;
    const sum = total.tasks.reduce((so, id) => {
      const interval = solution.tasks[problem.tasks.findIndex((task) => task.id === id)];
      return interval ? so + interval.end - interval.start : so;
    }, 0);
    if (sum !== total.total) faults.push(`total ${index}: ${sum}, not ${total.total}`);
  });
  return [
    ...faults,
    ...resourceFaults(problem, solution, modes),
    ...stateFaults(problem, solution, modes),
    ...soilFaults(solution, modes),
    ...reservoirFaults(problem, solution),
  ];
}

function timeOf(problem: Problem, solution: Solution, point: Point): number | null {
  if (point === 'origin') return 0;
  const interval = solution.tasks[problem.tasks.findIndex((task) => task.id === point.task)];
  return interval ? interval[point.at] : null;
}

function resourceFaults(problem: Problem, solution: Solution, modes: readonly (Mode | null)[]): string[] {
  return problem.resources.flatMap((resource) => {
    for (let minute = 0; minute < problem.horizon; minute += 1) {
      const entry = resource.calendar?.find(({ from, until }) => from <= minute && minute < until);
      let used = 0;
      solution.tasks.forEach((interval, index) => {
        if (!interval || interval.start > minute || interval.end <= minute) return;
        for (const use of modes[index]?.uses ?? []) if (use.resource === resource.id) used += use.amount;
      });
      if (used > (entry?.capacity ?? resource.capacity)) return [`${resource.id}: ${used} in use at ${minute}`];
    }
    return [];
  });
}

function stateFaults(problem: Problem, solution: Solution, modes: readonly (Mode | null)[]): string[] {
  const faults: string[] = [];
  for (const state of problem.states) {
    modes.forEach((first, i) => {
      modes.forEach((second, j) => {
        if (j <= i || first?.state?.state !== state.id || second?.state?.state !== state.id) return;
        const a = solution.tasks[i] as Interval;
        const b = solution.tasks[j] as Interval;
        const forth = state.gap[first.state.class]?.[second.state.class] ?? null;
        const back = state.gap[second.state.class]?.[first.state.class] ?? null;
        if (forth === null || back === null) return;
        if (b.start >= a.end + forth || a.start >= b.end + back) return;
        faults.push(`${state.id}: tasks ${i} and ${j} too close`);
      });
    });
  }
  return faults;
}

function soilFaults(solution: Solution, modes: readonly (Mode | null)[]): string[] {
  const uses: { readonly task: number; readonly interval: Interval; readonly use: Use }[] = [];
  modes.forEach((mode, task) => {
    for (const use of mode?.uses ?? []) uses.push({ task, interval: solution.tasks[task] as Interval, use });
  });
  const faults: string[] = [];
  for (const u of uses) {
    for (const v of uses) {
      if (u.task === v.task || u.use.resource !== v.use.resource) continue;
      if (!u.use.leaves?.some((soil) => v.use.avoids?.includes(soil))) continue;
      if (v.interval.end <= u.interval.start) continue;
      const cleaned = uses.some(
        ({ use, interval }) =>
          use.cleans === true &&
          use.resource === u.use.resource &&
          interval.start >= u.interval.end &&
          interval.end <= v.interval.start,
      );
      if (!cleaned) faults.push(`${u.use.resource}: task ${v.task} meets what task ${u.task} left`);
    }
  }
  return faults;
}

function reservoirFaults(problem: Problem, solution: Solution): string[] {
  return problem.reservoirs.flatMap((reservoir) => {
    const change = new Array<number>(problem.horizon + 1).fill(0);
    for (const event of reservoir.events) {
      const minute = timeOf(problem, solution, event.point);
      if (minute === null || !holds(problem, solution.choices, event.if)) continue;
      change[minute] = (change[minute] ?? 0) + event.amount;
    }
    let level = reservoir.initial;
    for (const [minute, amount] of change.entries()) {
      level += amount;
      if (level < 0 || level > (reservoir.capacity ?? Infinity))
        return [`${reservoir.id}: level ${level} at ${minute}`];
    }
    return [];
  });
}

/** The value of every tier for a solution, in the order of the problem's tiers. */
export function plainTierValues(problem: Problem, solution: Solution): number[] {
  const modes = modesTaken(problem, solution.choices);
  return problem.tiers.map((tier) => plainTierValue(problem, solution, modes, tier));
}

function plainTierValue(problem: Problem, solution: Solution, modes: readonly (Mode | null)[], tier: Tier): number {
  switch (tier.kind) {
    case 'latest': {
      let value = 0;
      for (const term of tier.terms) {
        const at = timeOf(problem, solution, term.point);
        if (at !== null) value = Math.max(value, (term.plus ?? 0) + (term.minus === true ? -at : at));
      }
      return value;
    }
    case 'waiting': {
      let value = 0;
      for (const term of tier.terms) {
        const from = timeOf(problem, solution, term.from);
        const to = timeOf(problem, solution, term.to);
        if (from !== null && to !== null) value += term.weight * Math.max(0, to - from - term.free);
      }
      return value;
    }
    case 'cost': {
      let value = 0;
      solution.tasks.forEach((interval, index) => {
        const cost = modes[index]?.cost;
        if (interval && cost) value += cost.fixed + cost.perMinute * (interval.end - interval.start);
      });
      return value;
    }
    case 'changes': {
      let value = 0;
      for (const resource of tier.resources) {
        const users = problem.tasks
          .map((task, index) => ({ task, interval: solution.tasks[index] ?? null, mode: modes[index] ?? null }))
          .filter(({ interval, mode }) => interval && mode?.uses.some((use) => use.resource === resource))
          .sort((a, b) => (a.interval?.start ?? 0) - (b.interval?.start ?? 0) || (a.task.id < b.task.id ? -1 : 1));
        users.forEach(({ task }, index) => {
          if (index > 0 && users[index - 1]?.task.group !== task.group) value += 1;
        });
      }
      return value;
    }
  }
}
