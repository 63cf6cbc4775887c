/**
 * Interchangeable optional work: of several choices that govern tasks alike in every respect, the options come in order, and tasks
 * under equal options in order of time.
 *
 * Two choices are interchangeable when exchanging them, and the tasks that hang on them in list order, leaves the problem as it is. Only
 * choices that may leave a task out are looked at (washes, pieces).
 */
import type { Literal, Point, Problem, Task } from '../../problem.ts';
import type { Conditions } from './conditions.ts';
import type { Core } from '../core.ts';
import type { Points } from './points.ts';

export function addSymmetry(problem: Problem, core: Core, conditions: Conditions, points: Points): void {
  if (tiesCount(problem)) return;
  const governed = problem.choices.map((choice) =>
    problem.tasks.flatMap((task, t) => (hangsOn(task, choice.id) ? [t] : [])),
  );
  const optional = problem.choices.flatMap((_, c) =>
    governed[c]!.some((t) => points.present[t] !== core.trail.alwaysTrue) ? [c] : [],
  );
  const lines = linesByChoice(problem, optional, governed);
  const before: number[] = [];
  for (const c of optional) {
    const twin = before.find((b) => exchangeable(problem, b, c, governed, lines));
    before.push(c);
    if (twin === undefined) continue;
    before.splice(before.indexOf(twin), 1);
    order(core, conditions, points, twin, c, governed);
  }
}

/** Whether a tier counts changes where tasks may start at one minute, so that their ids decide. */
function tiesCount(problem: Problem): boolean {
  const counted = new Set(problem.tiers.flatMap((tier) => (tier.kind === 'changes' ? tier.resources : [])));
  const exclusive = new Set(
    problem.resources.flatMap((r) =>
      Math.max(r.capacity, ...(r.calendar ?? []).map((entry) => entry.capacity)) <= 1 ? [r.id] : [],
    ),
  );
  return problem.tasks.some((task) =>
    task.modes.some((mode) =>
      mode?.uses.some(
        (use) => counted.has(use.resource) && !(exclusive.has(use.resource) && use.amount >= 1 && mode.shortest >= 1),
      ),
    ),
  );
}

function hangsOn(task: Task, choice: string): boolean {
  return task.choice === choice || (task.when ?? []).some((literal) => literal.choice === choice);
}

/** Option indices in order: a later option first is not allowed; under equal options the first task of `a` starts no later. */
function order(core: Core, conditions: Conditions, points: Points, a: number, b: number, governed: number[][]): void {
  const optionsA = conditions.options[a]!;
  const optionsB = conditions.options[b]!;
  const not = (l: number): number => conditions.not(l);
  for (let i = 0; i < optionsA.length; i++)
    for (let j = 0; j < i; j++) core.clause(not(optionsA[i]!), not(optionsB[j]!));
  const ta = governed[a]![0]!;
  const tb = governed[b]![0]!;
  for (let i = 0; i < optionsA.length; i++) {
    const guard = conditions.all([optionsA[i]!, optionsB[i]!, points.present[ta]!, points.present[tb]!]);
    const from = points.starts[ta]!;
    const to = points.starts[tb]!;
    if (guard !== core.trail.alwaysFalse && from.x !== to.x)
      core.arcs.add(2 * from.x, 2 * to.x, from.offset - to.offset, guard);
  }
}

/** One statement of the problem: the tasks and choices it names, and its text once they are renamed. */
interface Statement {
  readonly names: readonly string[];
  readonly text: (rename: (name: string) => string) => string;
}

/** The statements that name each of the choices or one of the tasks that hang on it. */
function linesByChoice(problem: Problem, optional: readonly number[], governed: number[][]): Map<number, Statement[]> {
  const owners = new Map<string, Set<number>>();
  const own = (name: string, c: number): void => {
    owners.set(name, (owners.get(name) ?? new Set()).add(c));
  };
  for (const c of optional) {
    own(choiceName(problem.choices[c]!.id), c);
    for (const t of governed[c]!) own(taskName(problem.tasks[t]!.id), c);
  }
  const lines = new Map<number, Statement[]>(optional.map((c) => [c, []]));
  for (const statement of statements(problem)) {
    const touched = new Set(statement.names.flatMap((name) => [...(owners.get(name) ?? [])]));
    for (const c of touched) lines.get(c)!.push(statement);
  }
  return lines;
}

const choiceName = (id: string): string => `choice ${id}`;
const taskName = (id: string): string => `task ${id}`;

function statements(problem: Problem): Statement[] {
  type Rename = (name: string) => string;
  const list: Statement[] = [];
  const add = (names: readonly string[], value: (rename: Rename) => unknown): void => {
    list.push({ names, text: (rename) => JSON.stringify(value(rename)) });
  };
  const literals = (rename: Rename, of: readonly Literal[] | undefined): string[] =>
    (of ?? []).map((l) => JSON.stringify([rename(choiceName(l.choice)), [...l.options].sort((a, b) => a - b)])).sort();
  const choices = (of: readonly Literal[] | undefined): string[] => (of ?? []).map((l) => choiceName(l.choice));
  const point = (rename: Rename, p: Point): unknown => (p === 'origin' ? p : [rename(taskName(p.task)), p.at]);
  const tasks = (...points: readonly Point[]): string[] =>
    points.flatMap((p) => (p === 'origin' ? [] : [taskName(p.task)]));
  for (const task of problem.tasks)
    add(
      [taskName(task.id), ...choices(task.when), ...(task.choice === undefined ? [] : [choiceName(task.choice)])],
      (r) => [
        'task',
        r(taskName(task.id)),
        task.choice === undefined ? null : r(choiceName(task.choice)),
        literals(r, task.when),
        task.modes,
      ],
    );
  for (const lag of problem.lags)
    add([...tasks(lag.from, lag.to), ...choices(lag.if)], (r) => [
      'lag',
      point(r, lag.from),
      point(r, lag.to),
      lag.least,
      literals(r, lag.if),
      lag.requirement ?? null,
    ]);
  for (const forbidden of problem.forbidden) add(choices(forbidden), (r) => ['forbidden', literals(r, forbidden)]);
  for (const total of problem.totals)
    add([...total.tasks.map(taskName), ...choices(total.if)], (r) => [
      'total',
      total.tasks.map((t) => r(taskName(t))).sort(),
      total.total,
      literals(r, total.if),
    ]);
  for (const reservoir of problem.reservoirs)
    for (const event of reservoir.events)
      add([...tasks(event.point), ...choices(event.if)], (r) => [
        'event',
        reservoir.id,
        point(r, event.point),
        event.amount,
        literals(r, event.if),
      ]);
  problem.tiers.forEach((tier, k) => {
    if (tier.kind === 'latest')
      for (const term of tier.terms)
        add(tasks(term.point), (r) => ['latest', k, point(r, term.point), term.plus ?? 0, term.minus ?? false]);
    if (tier.kind === 'waiting')
      for (const term of tier.terms)
        add(tasks(term.from, term.to), (r) => [
          'waiting',
          k,
          point(r, term.from),
          point(r, term.to),
          term.weight,
          term.free,
        ]);
  });
  return list;
}

function exchangeable(
  problem: Problem,
  a: number,
  b: number,
  governed: number[][],
  lines: ReadonlyMap<number, readonly Statement[]>,
): boolean {
  const ga = governed[a]!;
  const gb = governed[b]!;
  if (problem.choices[a]!.options.length !== problem.choices[b]!.options.length) return false;
  if (ga.length !== gb.length || ga.some((t) => gb.includes(t))) return false;
  if (lines.get(a)!.length !== lines.get(b)!.length) return false;
  const exchange = new Map<string, string>();
  const pair = (x: string, y: string): void => {
    exchange.set(x, y).set(y, x);
  };
  pair(choiceName(problem.choices[a]!.id), choiceName(problem.choices[b]!.id));
  ga.forEach((t, k) => pair(taskName(problem.tasks[t]!.id), taskName(problem.tasks[gb[k]!]!.id)));
  const all = [...new Set([...lines.get(a)!, ...lines.get(b)!])];
  const before = all.map((s) => s.text((name) => name)).sort();
  const after = all.map((s) => s.text((name) => exchange.get(name) ?? name)).sort();
  return before.every((text, i) => text === after[i]);
}
