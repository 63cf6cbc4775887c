/**
 * Optional tasks that could stand in for each other (the first, second and third washing of a board), with lags and forbidden
 * conjunctions that only number them in order of time.
 *
 * Such numbering helps a proof and hinders construction: a plan that has its first washing at noon could get none before. So search
 * works on the problem without it, and `renumber` gives a solution back in order.
 */
import type { Lag, Literal, Point, Problem, Task } from './problem.ts';
import type { Solution } from './outcome.ts';

export interface Loosened {
  readonly problem: Problem;
  /** Turns a solution of the loosened problem into one of the problem it came from. */
  readonly renumber: (solution: Solution) => Solution;
}

/** Takes the numbering of interchangeable tasks away. */
export function loosen(problem: Problem): Loosened {
  const families = findFamilies(problem);
  if (families.length === 0) return { problem, renumber: (solution) => solution };
  const familyOf = new Map<string, number>();
  const familyOfChoice = new Map<string, number>();
  families.forEach((family, index) =>
    family.forEach((task) => {
      familyOf.set(task.id, index);
      familyOfChoice.set(task.choice ?? '', index);
    }),
  );
  const lags = problem.lags.filter((lag) => {
    const family = familyAt(lag.from, familyOf);
    return family === undefined || family !== familyAt(lag.to, familyOf);
  });
  const forbidden = problem.forbidden.filter((literals) => {
    const family = familyOfChoice.get(literals[0]?.choice ?? '');
    return family === undefined || familyOfChoice.get(literals[1]?.choice ?? '') !== family;
  });
  return { problem: { ...problem, lags, forbidden }, renumber: (solution) => renumber(problem, families, solution) };
}

function familyAt(point: Point, familyOf: ReadonlyMap<string, number>): number | undefined {
  return point === 'origin' ? undefined : familyOf.get(point.task);
}

/** Families in order of their numbering. */
function findFamilies(problem: Problem): Task[][] {
  const owners = new Map<string, number>();
  for (const task of problem.tasks)
    if (task.choice !== undefined) owners.set(task.choice, (owners.get(task.choice) ?? 0) + 1);
  const options = new Map(problem.choices.map((choice) => [choice.id, choice.options.length]));
  const named = namedElsewhere(problem);
  const terms = latestTerms(problem);
  const alike = new Map<string, Task[]>();
  const written = new Map<Task['modes'], string>();
  for (const task of problem.tasks) {
    if (task.choice === undefined || task.when !== undefined || owners.get(task.choice) !== 1) continue;
    if (!task.modes.includes(null) || named.tasks.has(task.id) || named.choices.has(task.choice)) continue;
    const modes = written.get(task.modes) ?? JSON.stringify(task.modes);
    written.set(task.modes, modes);
    const key = `${modes} ${JSON.stringify([task.group, options.get(task.choice), terms.get(task.id) ?? []])}`;
    const family = alike.get(key);
    if (family === undefined) alike.set(key, [task]);
    else family.push(task);
  }
  const families = [...alike.values()].filter((family) => family.length > 1);
  const bonds = bondsOf(problem, families);
  return families.flatMap((family, index) => {
    const ordered = inOrder(family, bonds[index]!);
    return ordered === null ? [] : [ordered];
  });
}

/** What binds the members of a family. */
interface Bonds {
  readonly lags: Lag[];
  readonly forbidden: (readonly Literal[])[];
}

function bondsOf(problem: Problem, families: readonly (readonly Task[])[]): Bonds[] {
  const bonds = families.map((): Bonds => ({ lags: [], forbidden: [] }));
  const ofTask = new Map(families.flatMap((family, index) => family.map((task) => [task.id, bonds[index]!])));
  const ofChoice = new Map(families.flatMap((family, index) => family.map((task) => [task.choice, bonds[index]!])));
  const at = (point: Point): Bonds | undefined => (point === 'origin' ? undefined : ofTask.get(point.task));
  for (const lag of problem.lags) {
    const from = at(lag.from);
    const to = at(lag.to);
    from?.lags.push(lag);
    if (to !== from) to?.lags.push(lag);
  }
  for (const conjunction of problem.forbidden)
    for (const bond of new Set(conjunction.map((literal) => ofChoice.get(literal.choice))))
      bond?.forbidden.push(conjunction);
  return bonds;
}

/** Tasks and choices that something else than numbering speaks of. */
function namedElsewhere(problem: Problem): { tasks: Set<string>; choices: Set<string> } {
  const tasks = new Set<string>();
  const choices = new Set<string>();
  const point = (at: Point): void => {
    if (at !== 'origin') tasks.add(at.task);
  };
  const literals = (list: readonly Literal[] | undefined): void =>
    list?.forEach((literal) => choices.add(literal.choice));
  for (const task of problem.tasks) literals(task.when);
  for (const lag of problem.lags) {
    literals(lag.if);
    if (isNumbering(lag)) continue;
    point(lag.from);
    point(lag.to);
  }
  for (const conjunction of problem.forbidden) if (conjunction.length !== 2) literals(conjunction);
  for (const reservoir of problem.reservoirs)
    for (const event of reservoir.events) {
      point(event.point);
      literals(event.if);
    }
  for (const total of problem.totals) {
    total.tasks.forEach((id) => tasks.add(id));
    literals(total.if);
  }
  for (const tier of problem.tiers)
    if (tier.kind === 'waiting')
      for (const term of tier.terms) {
        point(term.from);
        point(term.to);
      }
  return { tasks, choices };
}

function isNumbering(lag: Problem['lags'][number]): boolean {
  const { from, to } = lag;
  if (from === 'origin' || to === 'origin' || lag.if !== undefined || lag.requirement !== undefined) return false;
  return from.at === 'end' && to.at === 'start' && lag.least === 0 && from.task !== to.task;
}

/** For each task its terms in tiers of kind `latest`, with the tier of each. */
function latestTerms(problem: Problem): Map<string, unknown[]> {
  const terms = new Map<string, unknown[]>();
  problem.tiers.forEach((tier, index) => {
    if (tier.kind !== 'latest') return;
    for (const { point, plus, minus } of tier.terms) {
      const list = terms.get(point.task) ?? [];
      terms.set(point.task, list);
      list.push([index, point.at === 'start', plus, minus]);
    }
  });
  return terms;
}

/** The family as a path of numbering lags, null when there is no such path or something else binds its members. */
function inOrder(family: readonly Task[], bonds: Bonds): Task[] | null {
  const byId = new Map(family.map((task) => [task.id, task]));
  const byChoice = new Map(family.map((task) => [task.choice ?? '', task]));
  const next = new Map<string, string>();
  for (const { from, to } of bonds.lags) {
    const a = from === 'origin' ? undefined : byId.get(from.task);
    const b = to === 'origin' ? undefined : byId.get(to.task);
    if (a === undefined && b === undefined) continue;
    if (a === undefined || b === undefined || next.has(a.id)) return null;
    next.set(a.id, b.id);
  }
  const followers = new Set(next.values());
  const order: Task[] = [];
  let at = family.find((task) => !followers.has(task.id));
  while (at !== undefined && order.length < family.length) {
    order.push(at);
    at = byId.get(next.get(at.id) ?? '');
  }
  if (order.length !== family.length || next.size !== family.length - 1) return null;
  // "The earlier absent and a later present" is the only thing that may be forbidden of them.
  for (const conjunction of bonds.forbidden) {
    const members = conjunction.map((literal) => byChoice.get(literal.choice));
    if (members.every((member) => member === undefined)) continue;
    const [first, second] = members;
    if (first === undefined || second === undefined || !forbidsGap(order, first, second, conjunction)) return null;
  }
  return order;
}

function forbidsGap(order: readonly Task[], first: Task, second: Task, conjunction: readonly Literal[]): boolean {
  const says = (task: Task, literal: Literal | undefined): 'absent' | 'present' | 'other' => {
    const absent = task.modes.flatMap((mode, option) => (mode === null ? [option] : []));
    const present = task.modes.flatMap((mode, option) => (mode === null ? [] : [option]));
    const given = JSON.stringify([...(literal?.options ?? [])].sort((a, b) => a - b));
    return given === JSON.stringify(absent) ? 'absent' : given === JSON.stringify(present) ? 'present' : 'other';
  };
  const a = says(first, conjunction[0]);
  const b = says(second, conjunction[1]);
  const forth = order.indexOf(first) < order.indexOf(second);
  return forth ? a === 'absent' && b === 'present' : a === 'present' && b === 'absent';
}

function renumber(problem: Problem, families: readonly (readonly Task[])[], solution: Solution): Solution {
  const taskIndex = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const choiceIndex = new Map(problem.choices.map((choice, index) => [choice.id, index]));
  const choices = [...solution.choices];
  const tasks = [...solution.tasks];
  for (const family of families) {
    const places = family.map((task) => ({
      task: taskIndex.get(task.id) ?? -1,
      choice: choiceIndex.get(task.choice ?? '') ?? -1,
    }));
    const contents = places.map(({ task, choice }) => ({
      interval: solution.tasks[task] ?? null,
      option: solution.choices[choice] ?? 0,
    }));
    const at = (item: (typeof contents)[number]): number => item.interval?.start ?? Infinity;
    contents.sort((a, b) => (at(a) === at(b) ? 0 : at(a) - at(b)));
    places.forEach(({ task, choice }, index) => {
      tasks[task] = contents[index]?.interval ?? null;
      choices[choice] = contents[index]?.option ?? 0;
    });
  }
  return { choices, tasks };
}
