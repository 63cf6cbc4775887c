/** A whole plan in flat arrays, with the values of its tiers. */
import type { Compiled, CompiledMode, CompiledTier } from '../compiled.ts';
import type { Solution } from '../outcome.ts';
import type { Store } from '../propagation/store.ts';

export interface Plan {
  readonly choices: Int32Array;
  /** Start and end of each task, −1 where it is absent. */
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** Mode of each task, −1 where it is absent. */
  readonly mode: Int32Array;
  readonly values: Float64Array;
}

/** Reads the plan off a store in which everything is decided. */
export function planOf(store: Store): Plan {
  const { compiled } = store;
  const { taskCount, optionCount } = compiled;
  const start = new Int32Array(taskCount).fill(-1);
  const end = new Int32Array(taskCount).fill(-1);
  const mode = new Int32Array(taskCount).fill(-1);
  for (let task = 0; task < taskCount; task++) {
    if (!store.isPresent(task)) continue;
    start[task] = store.earliestStart(task);
    end[task] = store.earliestEnd(task);
    mode[task] = store.mode(task);
  }
  const choices = new Int32Array(optionCount.length);
  for (let choice = 0; choice < choices.length; choice++) choices[choice] = store.firstOption(choice);
  return withValues(compiled, choices, start, end, mode);
}

/** Reads a plan out of a solution that `verifySolution` accepts. */
export function planOfSolution(compiled: Compiled, solution: Solution): Plan {
  const { taskCount, taskChoice, optionMode } = compiled;
  const start = new Int32Array(taskCount).fill(-1);
  const end = new Int32Array(taskCount).fill(-1);
  const mode = new Int32Array(taskCount).fill(-1);
  const choices = Int32Array.from(solution.choices);
  solution.tasks.forEach((interval, task) => {
    if (interval === null) return;
    start[task] = interval.start;
    end[task] = interval.end;
    const choice = taskChoice[task] as number;
    const option = choice < 0 ? 0 : (choices[choice] as number);
    mode[task] = optionMode.items[(optionMode.start[task] as number) + option] as number;
  });
  return withValues(compiled, choices, start, end, mode);
}

/** A plan by its starts alone, where every task is there in its only mode and of fixed length. */
export function planOfStarts(compiled: Compiled, starts: Int32Array): Plan {
  const { taskCount, optionCount, taskModes, modes } = compiled;
  const start = starts.slice();
  const mode = Int32Array.from(
    { length: taskCount },
    (_, task) => taskModes.items[taskModes.start[task] as number] as number,
  );
  const end = Int32Array.from(start, (at, task) => at + (modes[mode[task] as number] as CompiledMode).shortest);
  return withValues(compiled, new Int32Array(optionCount.length), start, end, mode);
}

/** The plan with every task so many minutes later (earlier where below 0); what it then breaks is not looked at. */
export function movedBy(compiled: Compiled, { choices, start, end, mode }: Plan, minutes: number): Plan {
  const moved = (times: Int32Array): Int32Array => times.map((time) => (time < 0 ? time : time + minutes));
  return withValues(compiled, choices, moved(start), moved(end), mode);
}

/** The plan as the outcome tells it. */
export function solutionOf(plan: Plan): Solution {
  return {
    choices: [...plan.choices],
    tasks: Array.from(plan.start, (start, task) => (start < 0 ? null : { start, end: plan.end[task] as number })),
  };
}

/** −1, 0 or 1 as the values of `a` are less, equal or greater than those of `b`, the first difference deciding. */
export function compareValues(a: Float64Array, b: Float64Array): number {
  for (let k = 0; k < a.length; k++) if (a[k] !== b[k]) return (a[k] as number) < (b[k] as number) ? -1 : 1;
  return 0;
}

function withValues(
  compiled: Compiled,
  choices: Int32Array,
  start: Int32Array,
  end: Int32Array,
  mode: Int32Array,
): Plan {
  const values = Float64Array.from(compiled.tiers, (tier) => tierValue(compiled, tier, start, end, mode));
  return { choices, start, end, mode, values };
}

function tierValue(
  compiled: Compiled,
  tier: CompiledTier,
  start: Int32Array,
  end: Int32Array,
  mode: Int32Array,
): number {
  const { origin } = compiled;
  const at = (node: number): number =>
    node === origin ? 0 : (((node & 1) === 0 ? start[node >> 1] : end[node >> 1]) as number);
  let value = 0;
  switch (tier.kind) {
    case 'latest':
      for (const { node, plus, minus } of tier.terms) {
        const time = at(node);
        if (time >= 0) value = Math.max(value, minus ? plus - time : plus + time);
      }
      return value;
    case 'waiting':
      for (const { weight, from, to, free } of tier.terms) {
        const begin = at(from);
        const finish = at(to);
        if (begin >= 0 && finish >= 0) value += weight * Math.max(0, finish - begin - free);
      }
      return value;
    case 'cost':
      mode.forEach((index, task) => {
        if (index < 0) return;
        const { costFixed, costPerMinute } = compiled.modes[index] as CompiledMode;
        value += costFixed + costPerMinute * ((end[task] as number) - (start[task] as number));
      });
      return value;
    case 'changes':
      for (const resource of tier.resources) value += changesOn(compiled, resource, start, mode);
      return value;
  }
}

function changesOn(compiled: Compiled, resource: number, start: Int32Array, mode: Int32Array): number {
  const { problem, modes, group } = compiled;
  const users: number[] = [];
  mode.forEach((index, task) => {
    if (index >= 0 && modes[index]?.uses.some((use) => use.resource === resource)) users.push(task);
  });
  const id = (task: number): string => problem.tasks[task]?.id ?? '';
  users.sort((a, b) => (start[a] as number) - (start[b] as number) || (id(a) < id(b) ? -1 : 1));
  let changes = 0;
  for (let k = 1; k < users.length; k++) if (group[users[k] as number] !== group[users[k - 1] as number]) changes++;
  return changes;
}
