/**
 * Interchangeable optional work: of several choices that govern tasks alike in every respect, the options come in order, and tasks
 * under equal options in order of time.
 *
 * Two choices are interchangeable when exchanging them, and the tasks that hang on them in list order, leaves the problem as it is. Only
 * choices that may leave a task out are looked at (washes, pieces).
 */
import { choiceName, statements, taskName } from './statements.ts';
import type { Problem, Task } from '../../problem.ts';
import type { Conditions } from './conditions.ts';
import type { Core } from '../core.ts';
import type { Points } from './points.ts';
import type { Statement } from './statements.ts';

export function addSymmetry(problem: Problem, core: Core, conditions: Conditions, points: Points): void {
  if (tiesCount(problem)) return;
  const governed = problem.choices.map((choice) =>
    problem.tasks.flatMap((task, t) => (hangsOn(task, choice.id) ? [t] : [])),
  );
  const optional = problem.choices.flatMap((_, c) =>
    governed[c]!.some((t) => points.present[t] !== core.trail.alwaysTrue) ? [c] : [],
  );
  const owners = ownersByName(problem, optional, governed);
  const lines = linesByChoice(problem, optional, owners);
  const sides = new Map(optional.map((c) => [c, sideOf(problem, c, governed[c]!, lines.get(c)!, owners)]));
  const before: number[] = [];
  for (const c of optional) {
    const twin = before.find((b) => sides.get(b) === sides.get(c) && exchangeable(problem, b, c, governed, lines));
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

/** By name of a choice or task: the choices that it is, or that it hangs on. */
type Owners = ReadonlyMap<string, ReadonlySet<number>>;

function ownersByName(problem: Problem, optional: readonly number[], governed: number[][]): Owners {
  const owners = new Map<string, Set<number>>();
  const own = (name: string, c: number): void => {
    owners.set(name, (owners.get(name) ?? new Set()).add(c));
  };
  for (const c of optional) {
    own(choiceName(problem.choices[c]!.id), c);
    for (const t of governed[c]!) own(taskName(problem.tasks[t]!.id), c);
  }
  return owners;
}

/** The statements that name each of the choices or one of the tasks that hang on it. */
function linesByChoice(problem: Problem, optional: readonly number[], owners: Owners): Map<number, Statement[]> {
  const lines = new Map<number, Statement[]>(optional.map((c) => [c, []]));
  for (const statement of statements(problem)) {
    const touched = new Set(statement.names.flatMap((name) => [...(owners.get(name) ?? [])]));
    for (const c of touched) lines.get(c)!.push(statement);
  }
  return lines;
}

/**
 * All that is said of a choice from its own side: its names stand as "own", those of other optional choices are not told apart. What is said of
 * interchangeable choices is alike in this way, and few others are.
 */
function sideOf(
  problem: Problem,
  choice: number,
  governed: readonly number[],
  lines: readonly Statement[],
  owners: Owners,
): string {
  const own = new Map([[choiceName(problem.choices[choice]!.id), 'own choice']]);
  governed.forEach((t, k) => own.set(taskName(problem.tasks[t]!.id), `own task ${k}`));
  const rename = (name: string): string => own.get(name) ?? (owners.has(name) ? 'another' : name);
  const texts = lines.map((statement) => statement.text(rename)).sort();
  return JSON.stringify([problem.choices[choice]!.options.length, texts]);
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
  if (ga.length !== gb.length || ga.some((t) => gb.includes(t))) return false;
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
