/**
 * Large neighbourhoods of the best plan, as assumptions: most orders and choices are kept, a part is free.
 *
 * What is kept is the order of tasks, not their times, so that the kept part can move; what is learned inside holds everywhere. Three kinds of
 * free part: the tasks of a time window, those on one resource within a longer window, and a random few with all that touches them.
 *
 * Sources: Shaw (1998), large neighbourhoods; Godard, Laborie, Nuijten (2005), partial-order schedules.
 */
import type { Random } from '../random.ts';
import type { Solution } from '../outcome.ts';
import type { Model } from './model/model.ts';

/**
 * @param plan the plan whose values the core's guide has
 * @param size share of the tasks to free, 0–1
 * @returns literals true in the guide that keep the rest
 */
export function neighbourhood(model: Model, plan: Solution, size: number, random: Random): number[] {
  const free = freeTasks(model, plan, size, random);
  return [...keptChoices(model, free), ...keptOrders(model, plan, free)];
}

/**
 * @param plan the plan whose values the core's guide has
 * @returns literals true in the guide that keep all its choices and orders, and leave the times free
 */
export function orderOf(model: Model, plan: Solution): number[] {
  const { core, orders } = model;
  const absent = Uint8Array.from(plan.tasks, (at) => (at === null ? 1 : 0));
  const literals = keptChoices(model, absent);
  for (const { a, b, aFirst, bFirst } of orders.made)
    if (absent[a] === 0 && absent[b] === 0)
      for (const literal of [aFirst, bFirst]) if (core.guide.holds(literal)) literals.push(literal);
  return literals;
}

function freeTasks(model: Model, plan: Solution, size: number, random: Random): Uint8Array {
  const { problem } = model;
  const free = new Uint8Array(problem.tasks.length);
  const count = Math.max(2, Math.floor(size * problem.tasks.length));
  const placed = plan.tasks
    .flatMap((at, t) => (at === null ? [] : [{ t, start: at.start, end: at.end }]))
    .sort((a, b) => a.start - b.start || a.t - b.t);
  if (placed.length === 0) return free;
  // Absent tasks are always free: whether they come in is part of every question.
  plan.tasks.forEach((at, t) => {
    if (at === null) free[t] = 1;
  });
  const kind = random.below(3);
  if (kind === 0) {
    const from = random.below(placed.length);
    for (const item of placed.slice(Math.max(0, from - (count >> 1))).slice(0, count)) free[item.t] = 1;
  } else if (kind === 1 && problem.resources.length > 0) {
    const resource = problem.resources[random.below(problem.resources.length)]!.id;
    const users = placed.filter(({ t }) =>
      problem.tasks[t]!.modes.some((mode) => mode?.uses.some((use) => use.resource === resource)),
    );
    const from = users.length > count ? random.below(users.length - count + 1) : 0;
    for (const item of users.slice(from, from + count)) free[item.t] = 1;
  } else {
    for (let k = 0; k < count; k++) free[placed[random.below(placed.length)]!.t] = 1;
  }
  return free;
}

/** Choices on which no free task hangs stay as they are. */
function keptChoices(model: Model, free: Uint8Array): number[] {
  const { problem, conditions, core } = model;
  const open = new Set<string>();
  problem.tasks.forEach((task, t) => {
    if (free[t] === 0) return;
    if (task.choice !== undefined) open.add(task.choice);
    for (const literal of task.when ?? []) open.add(literal.choice);
  });
  return problem.choices.flatMap((choice, c) => {
    if (open.has(choice.id) || choice.options.length < 2) return [];
    const taken = conditions.options[c]!.find((literal) => core.guide.holds(literal));
    return taken === undefined ? [] : [taken];
  });
}

/** Orders between kept tasks; those that follow from two others over a task in between are left out. */
function keptOrders(model: Model, plan: Solution, free: Uint8Array): number[] {
  const { orders, core } = model;
  const after = new Map<number, { readonly task: number; readonly literal: number }[]>();
  for (const { a, b, aFirst, bFirst } of orders.made) {
    if (free[a] === 1 || free[b] === 1) continue;
    const [first, second, literal] = core.guide.holds(aFirst) ? [a, b, aFirst] : [b, a, bFirst];
    if (!core.guide.holds(literal)) continue;
    const list = after.get(first) ?? [];
    list.push({ task: second, literal });
    after.set(first, list);
  }
  const literals: number[] = [];
  for (const list of after.values()) {
    list.sort((x, y) => plan.tasks[x.task]!.start - plan.tasks[y.task]!.start || x.task - y.task);
    let soonest = Infinity;
    for (const { task, literal } of list) {
      const at = plan.tasks[task]!;
      if (at.start >= soonest) break;
      soonest = Math.min(soonest, Math.max(at.end, at.start + 1));
      literals.push(literal);
    }
  }
  return literals;
}
