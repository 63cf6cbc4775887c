/** What a problem says, statement by statement, as texts in which the names of tasks and choices can be exchanged. */
import type { Literal, Point, Problem } from '../../problem.ts';

/** One statement of the problem: the tasks and choices it names, and its text once they are renamed. */
export interface Statement {
  readonly names: readonly string[];
  readonly text: (rename: (name: string) => string) => string;
}

export const choiceName = (id: string): string => `choice ${id}`;
export const taskName = (id: string): string => `task ${id}`;

export function statements(problem: Problem): Statement[] {
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
  for (const task of problem.tasks) {
    let known: string | undefined;
    const modes = (): string => (known ??= JSON.stringify(task.modes));
    add(
      [taskName(task.id), ...choices(task.when), ...(task.choice === undefined ? [] : [choiceName(task.choice)])],
      (r) => [
        'task',
        r(taskName(task.id)),
        task.choice === undefined ? null : r(choiceName(task.choice)),
        literals(r, task.when),
        modes(),
      ],
    );
  }
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
