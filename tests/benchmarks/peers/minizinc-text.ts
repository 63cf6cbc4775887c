/**
 * A scheduling problem as a MiniZinc model, its first tier as the objective: what another constraint solver is asked.
 *
 * Beside the problem itself it gets what our own model adds: an order for each pair of tasks that can never overlap on a resource,
 * a cumulative constraint for each set of resources that a task chooses among, and the energy that a finish owes to each of those.
 * An absent task stands at 0 with its least length and uses nothing.
 */
import type { Literal, Mode, Point, Problem, Resource, Tier } from '../../../solver/engine/problem.ts';
import type { Solution } from '../../../solver/engine/outcome.ts';

/** A model and how to read a plan from what its solver writes out. */
export interface MiniZincModel {
  readonly text: string;
  /** @param output values of the model's variables, by name */
  readonly read: (output: Readonly<Record<string, unknown>>) => Solution;
}

const TRUE = 'true';
const FALSE = 'false';

const all = (parts: readonly string[]): string => {
  const kept = [...new Set(parts)].filter((part) => part !== TRUE);
  if (kept.includes(FALSE)) return FALSE;
  return kept.length === 0 ? TRUE : kept.length === 1 ? kept[0]! : `(${kept.join(' /\\ ')})`;
};

const any = (parts: readonly string[]): string => {
  const kept = [...new Set(parts)].filter((part) => part !== FALSE);
  if (kept.includes(TRUE)) return TRUE;
  return kept.length === 0 ? FALSE : kept.length === 1 ? kept[0]! : `(${kept.join(' \\/ ')})`;
};

const not = (part: string): string => (part === TRUE ? FALSE : part === FALSE ? TRUE : `not ${part}`);

/** Adds up terms of the form "amount while a literal holds". */
const sumOf = (terms: readonly { readonly amount: number; readonly while: string }[]): string => {
  const parts = terms
    .filter((term) => term.amount !== 0 && term.while !== FALSE)
    .map((term) => (term.while === TRUE ? `${term.amount}` : `${term.amount}*bool2int(${term.while})`));
  return parts.length === 0 ? '0' : parts.join(' + ');
};

/**
 * Writes a problem as a MiniZinc model.
 *
 * @param problem any; a first tier of kind `changes` has no model
 * @param atMost the value of a plan known: only plans at least as good are asked for
 * @throws Error where the first tier is of a kind without a model
 */
export function minizincModel(problem: Problem, atMost?: number): MiniZincModel {
  return new Writing(problem, atMost).model();
}

class Writing {
  private readonly lines: string[] = ['include "cumulative.mzn";'];
  private readonly names = new Map<string, string>();
  private readonly present: string[] = [];
  /** By task and mode: present in that mode. */
  private readonly inMode: string[][] = [];
  private readonly start: string[] = [];
  private readonly length: string[] = [];
  private readonly index = new Map<string, number>();

  constructor(
    private readonly problem: Problem,
    private readonly atMost: number | undefined,
  ) {
    problem.tasks.forEach((task, t) => this.index.set(task.id, t));
  }

  model(): MiniZincModel {
    const { problem } = this;
    problem.choices.forEach((choice, c) => {
      if (choice.options.length > 1) this.line(`var 0..${choice.options.length - 1}: c${c};`);
    });
    problem.tasks.forEach((_, t) => this.task(t));
    this.lags();
    for (const conjunction of problem.forbidden) this.constrain(not(this.literals(conjunction)));
    this.totals();
    this.resources();
    this.states();
    this.soil();
    this.reservoirs();
    const first = problem.tiers[0];
    if (first !== undefined) this.objective(first);
    const starts = this.start.filter((name) => name.startsWith('s'));
    const goal = first === undefined ? 'satisfy' : 'minimize goal';
    const order = starts.length === 0 ? '' : ` :: int_search([${starts.join(', ')}], smallest, indomain_min)`;
    this.line(`solve${order} ${goal};`);
    return { text: `${this.lines.join('\n')}\n`, read: (output) => this.read(output) };
  }

  private line(text: string): void {
    this.lines.push(text);
  }

  private constrain(text: string): void {
    if (text !== TRUE) this.line(`constraint ${text};`);
  }

  /** A Boolean variable equal to an expression, made once. */
  private named(expression: string): string {
    if (expression === TRUE || expression === FALSE || /^\w+$/.test(expression)) return expression;
    const known = this.names.get(expression);
    if (known !== undefined) return known;
    const name = `b${this.names.size}`;
    this.names.set(expression, name);
    this.line(`var bool: ${name} = ${expression};`);
    return name;
  }

  private literal({ choice, options }: Literal): string {
    const c = this.problem.choices.findIndex((each) => each.id === choice);
    const wanted = [...new Set(options)].sort((a, b) => a - b);
    const count = this.problem.choices[c]!.options.length;
    if (wanted.length === count) return TRUE;
    if (wanted.length === 0) return FALSE;
    return this.named(wanted.length === 1 ? `(c${c} = ${wanted[0]})` : `(c${c} in {${wanted.join(', ')}})`);
  }

  private literals(literals: readonly Literal[] | undefined): string {
    return this.named(all((literals ?? []).map((literal) => this.literal(literal))));
  }

  private task(t: number): void {
    const task = this.problem.tasks[t]!;
    const { horizon } = this.problem;
    const when = this.literals(task.when);
    const fits = (mode: Mode | null): mode is Mode => mode !== null && mode.shortest <= horizon;
    const chosen = (options: readonly number[]): string =>
      task.choice === undefined ? TRUE : this.literal({ choice: task.choice, options });
    this.inMode.push(task.modes.map((mode, m) => (mode === null ? FALSE : this.named(all([when, chosen([m])])))));
    const there = task.modes.flatMap((mode, m) => (mode === null ? [] : [m]));
    this.present.push(this.named(all([when, chosen(there)])));
    task.modes.forEach((mode, m) => {
      if (mode !== null && !fits(mode)) this.constrain(not(this.inMode[t]![m]!));
    });
    const modes = task.modes.filter(fits);
    const shortest = Math.min(...modes.map((mode) => mode.shortest), horizon);
    const longest = Math.min(horizon, Math.max(...modes.map((mode) => mode.longest), shortest));
    this.start.push(horizon === shortest ? '0' : `s${t}`);
    this.length.push(shortest === longest ? `${shortest}` : `d${t}`);
    const s = this.start[t]!;
    const d = this.length[t]!;
    if (s !== '0') this.line(`var 0..${horizon - shortest}: ${s};`);
    if (shortest !== longest) {
      this.line(`var ${shortest}..${longest}: ${d};`);
      task.modes.forEach((mode, m) => {
        if (!fits(mode)) return;
        const bounds = [
          ...(mode.shortest > shortest ? [`${d} >= ${mode.shortest}`] : []),
          ...(mode.longest < longest ? [`${d} <= ${mode.longest}`] : []),
        ];
        if (bounds.length > 0) this.imply([this.inMode[t]![m]!], all(bounds));
      });
      this.constrain(`${s} + ${d} <= ${horizon}`);
    }
    if (this.present[t] !== TRUE) {
      if (s !== '0') this.imply([not(this.present[t]!)], `${s} = 0`);
      if (d.startsWith('d')) this.imply([not(this.present[t]!)], `${d} = ${shortest}`);
    }
  }

  private imply(conditions: readonly string[], consequence: string): void {
    const condition = all(conditions);
    if (condition === FALSE) return;
    this.constrain(condition === TRUE ? consequence : `(${condition}) -> (${consequence})`);
  }

  private end(t: number): string {
    return this.length[t] === '0' ? this.start[t]! : `${this.start[t]!} + ${this.length[t]!}`;
  }

  private time(point: Point): string {
    if (point === 'origin') return '0';
    const t = this.index.get(point.task)!;
    return point.at === 'start' ? this.start[t]! : this.end(t);
  }

  private there(point: Point): string {
    return point === 'origin' ? TRUE : this.present[this.index.get(point.task)!]!;
  }

  private lags(): void {
    for (const { from, to, least, if: literals } of this.problem.lags)
      this.imply(
        [this.there(from), this.there(to), this.literals(literals)],
        `${this.time(to)} - (${this.time(from)}) >= ${least}`,
      );
  }

  private totals(): void {
    for (const { tasks, total, if: literals } of this.problem.totals) {
      const parts = tasks.map((id) => {
        const t = this.index.get(id)!;
        const here = this.present[t]!;
        return here === TRUE ? this.length[t]! : `${this.length[t]!} * bool2int(${here})`;
      });
      this.imply([this.literals(literals)], `${parts.length === 0 ? '0' : parts.join(' + ')} = ${total}`);
    }
  }

  /** By mode, what a task uses of a set of resources; 0 where the mode has no length. */
  private amounts(t: number, resources: ReadonlySet<string>): number[] {
    return this.problem.tasks[t]!.modes.map((mode) => {
      if (mode === null || mode.longest === 0) return 0;
      return mode.uses.reduce((sum, use) => sum + (resources.has(use.resource) ? use.amount : 0), 0);
    });
  }

  private resources(): void {
    const { problem } = this;
    const sets = [...problem.resources.map(({ id }) => new Set([id])), ...alternatives(problem)];
    const apart = new Set<string>();
    for (const set of sets) {
      const capacity = capacityOf(problem, set);
      const most = Math.max(...capacity);
      const users = problem.tasks.flatMap((_, t) => {
        const byMode = this.amounts(t, set);
        return byMode.some((amount) => amount > 0) ? [{ t, byMode }] : [];
      });
      if (users.length === 0) continue;
      this.cumulative(users, capacity, most);
      if (set.size === 1) this.orders(users, most, apart);
    }
    for (const line of apart) this.constrain(line);
  }

  private levels(t: number, byMode: readonly number[]): { readonly amount: number; readonly while: string }[] {
    const levels = [...new Set(byMode)].filter((amount) => amount > 0).sort((a, b) => a - b);
    return levels.map((level, i) => ({
      amount: level - (levels[i - 1] ?? 0),
      while: this.named(any(this.inMode[t]!.filter((_, m) => byMode[m]! >= level))),
    }));
  }

  private cumulative(
    users: readonly { readonly t: number; readonly byMode: readonly number[] }[],
    capacity: readonly number[],
    most: number,
  ): void {
    const less = periods(capacity).filter((period) => period.capacity < most);
    const starts = [...users.map(({ t }) => this.start[t]!), ...less.map(({ from }) => `${from}`)];
    const lengths = [...users.map(({ t }) => this.length[t]!), ...less.map(({ from, until }) => `${until - from}`)];
    const demands = [
      ...users.map(({ t, byMode }) => sumOf(this.levels(t, byMode))),
      ...less.map((period) => `${most - period.capacity}`),
    ];
    this.constrain(`cumulative([${starts.join(', ')}], [${lengths.join(', ')}], [${demands.join(', ')}], ${most})`);
  }

  /** Orders of the pairs that together pass the capacity whenever both use the resource. */
  private orders(
    users: readonly { readonly t: number; readonly byMode: readonly number[] }[],
    most: number,
    into: Set<string>,
  ): void {
    const sure = users.flatMap(({ t, byMode }) => {
      const modes = this.problem.tasks[t]!.modes;
      const long = byMode.map((amount, m) => ((modes[m]?.shortest ?? 0) > 0 ? amount : 0));
      const least = Math.min(...long.filter((amount) => amount > 0));
      if (least === Infinity) return [];
      return [{ t, least, using: this.named(any(this.inMode[t]!.filter((_, m) => long[m]! > 0))) }];
    });
    sure.forEach((a, i) => {
      for (const b of sure.slice(i + 1))
        if (a.least + b.least > most)
          into.add(
            any([
              not(a.using),
              not(b.using),
              `${this.end(a.t)} <= ${this.start[b.t]!}`,
              `${this.end(b.t)} <= ${this.start[a.t]!}`,
            ]),
          );
    });
  }

  private states(): void {
    for (const state of this.problem.states) {
      const users = this.problem.tasks.flatMap((task, t) =>
        state.classes.flatMap((_, cls) => {
          const modes = task.modes.flatMap((mode, m) =>
            mode?.state?.state === state.id && mode.state.class === cls ? [this.inMode[t]![m]!] : [],
          );
          return modes.length === 0 ? [] : [{ t, cls, using: this.named(any(modes)) }];
        }),
      );
      users.forEach((a, i) => {
        for (const b of users.slice(i + 1)) {
          const forth = state.gap[a.cls]?.[b.cls] ?? null;
          const back = state.gap[b.cls]?.[a.cls] ?? null;
          if (a.t === b.t || forth === null || back === null) continue;
          this.constrain(
            any([
              not(a.using),
              not(b.using),
              `${this.end(a.t)} + ${forth} <= ${this.start[b.t]!}`,
              `${this.end(b.t)} + ${back} <= ${this.start[a.t]!}`,
            ]),
          );
        }
      });
    }
  }

  private soil(): void {
    for (const { id } of this.problem.resources) {
      const uses = this.problem.tasks.flatMap((task, t) =>
        task.modes.flatMap((mode, m) =>
          (mode?.uses ?? []).flatMap((use) => (use.resource === id ? [{ t, using: this.inMode[t]![m]!, use }] : [])),
        ),
      );
      const cleaners = uses.filter(({ use }) => use.cleans === true);
      for (const before of uses)
        for (const after of uses) {
          if (before.t === after.t || before.use.leaves?.some((soil) => after.use.avoids?.includes(soil)) !== true)
            continue;
          const ways = cleaners.map((cleaner) =>
            all([
              cleaner.using,
              `${this.start[cleaner.t]!} >= ${this.end(before.t)}`,
              `${this.end(cleaner.t)} <= ${this.start[after.t]!}`,
            ]),
          );
          const reversed = `${this.end(after.t)} <= ${this.start[before.t]!}`;
          this.constrain(any([not(before.using), not(after.using), reversed, ...ways]));
        }
    }
  }

  private reservoirs(): void {
    for (const { initial, capacity, events } of this.problem.reservoirs) {
      const active = events.map(({ point, if: literals }) =>
        this.named(all([this.there(point), this.literals(literals)])),
      );
      const level = (by: string): string =>
        `${initial} + ${sumOf(
          events.map(({ point, amount }, k) => ({
            amount,
            while: this.named(all([active[k]!, `(${this.time(point)} <= ${by})`])),
          })),
        )}`;
      const inRange = (value: string): string =>
        capacity === undefined ? `(${value} >= 0)` : `(${value} >= 0 /\\ ${value} <= ${capacity})`;
      if (initial < 0 || initial > (capacity ?? Infinity)) this.constrain(inRange(level('0')));
      events.forEach(({ point }, k) => this.imply([active[k]!], inRange(level(this.time(point)))));
    }
  }

  private objective(tier: Tier): void {
    switch (tier.kind) {
      case 'latest': {
        const most = this.problem.horizon + Math.max(0, ...tier.terms.map((term) => term.plus ?? 0));
        this.line(`var 0..${Math.min(this.atMost ?? most, most)}: goal;`);
        for (const { point, plus = 0, minus } of tier.terms)
          this.imply([this.there(point)], `goal >= ${plus} ${minus === true ? '-' : '+'} (${this.time(point)})`);
        this.energy(
          tier.terms.flatMap(({ point, minus }) => (minus !== true && point.at === 'end' ? [point.task] : [])),
        );
        return;
      }
      case 'waiting': {
        const terms = tier.terms.map(({ weight, from, to, free }) => {
          const wait = `max(0, ${this.time(to)} - (${this.time(from)}) - ${free})`;
          const both = this.named(all([this.there(from), this.there(to)]));
          return both === TRUE ? `${weight} * ${wait}` : `${weight} * bool2int(${both}) * ${wait}`;
        });
        this.goalIs(terms);
        return;
      }
      case 'cost':
        this.goalIs(
          this.problem.tasks.flatMap((task, t) =>
            task.modes.flatMap((mode, m) => {
              if (mode?.cost === undefined) return [];
              const { fixed, perMinute } = mode.cost;
              return [`bool2int(${this.inMode[t]![m]!}) * (${fixed} + ${perMinute} * ${this.length[t]!})`];
            }),
          ),
        );
        return;
      case 'changes':
        throw new Error('a first tier that counts changes has no model');
    }
  }

  private goalIs(terms: readonly string[]): void {
    // Only variables without a right-hand side are written out.
    this.line('var int: goal;');
    this.constrain(`goal = ${terms.length === 0 ? '0' : terms.join(' + ')}`);
    if (this.atMost !== undefined) this.constrain(`goal <= ${this.atMost}`);
  }

  /** All work that must end by the goal fits under the capacity until then. */
  private energy(counted: readonly string[]): void {
    const { problem } = this;
    const inGoal = new Set(counted);
    for (const set of [...problem.resources.map(({ id }) => new Set([id])), ...alternatives(problem)]) {
      const most = Math.max(...capacityOf(problem, set));
      const terms = problem.tasks.flatMap((task, t) => {
        if (!inGoal.has(task.id)) return [];
        const energies = this.amounts(t, set).map((amount, m) => amount * (task.modes[m]?.shortest ?? 0));
        return this.levels(t, energies);
      });
      if (terms.length > 1 && most > 0) this.constrain(`${sumOf(terms)} <= ${most} * goal`);
    }
  }

  private read(output: Readonly<Record<string, unknown>>): Solution {
    const value = (name: string): number => (/^\d+$/.test(name) ? Number(name) : Number(output[name]));
    const choices = this.problem.choices.map((choice, c) => (choice.options.length > 1 ? value(`c${c}`) : 0));
    const taken = (literals: readonly Literal[] | undefined): boolean =>
      (literals ?? []).every(({ choice, options }) =>
        options.includes(choices[this.problem.choices.findIndex((each) => each.id === choice)]!),
      );
    const tasks = this.problem.tasks.map((task, t) => {
      const option =
        task.choice === undefined ? 0 : choices[this.problem.choices.findIndex(({ id }) => id === task.choice)]!;
      if (!taken(task.when) || (task.modes[option] ?? null) === null) return null;
      const start = value(this.start[t]!);
      return { start, end: start + value(this.length[t]!) };
    });
    return { choices, tasks };
  }
}

function capacityOf(problem: Problem, set: ReadonlySet<string>): number[] {
  const capacity = new Array<number>(problem.horizon).fill(0);
  for (const resource of problem.resources) {
    if (!set.has(resource.id)) continue;
    capacity.forEach((before, minute) => (capacity[minute] = before + capacityAt(resource, minute)));
  }
  return capacity;
}

function capacityAt(resource: Resource, minute: number): number {
  const entry = resource.calendar?.find(({ from, until }) => from <= minute && minute < until);
  return entry?.capacity ?? resource.capacity;
}

function periods(capacity: readonly number[]): { from: number; until: number; capacity: number }[] {
  const list: { from: number; until: number; capacity: number }[] = [];
  capacity.forEach((each, minute) => {
    const last = list.at(-1);
    if (last?.capacity === each) last.until = minute + 1;
    else list.push({ from: minute, until: minute + 1, capacity: each });
  });
  return list;
}

/** Sets of resources that some task chooses among: the k-th that each mode has of its own, where all have as many. */
function alternatives(problem: Problem): Set<string>[] {
  const found = new Map<string, Set<string>>();
  for (const task of problem.tasks) {
    const modes = task.modes.filter((mode) => mode !== null);
    if (modes.length < 2) continue;
    const used = modes.map((mode) => [
      ...new Set(mode.uses.filter((use) => use.amount > 0).map((use) => use.resource)),
    ]);
    const common = used[0]!.filter((resource) => used.every((list) => list.includes(resource)));
    const own = used.map((list) => list.filter((resource) => !common.includes(resource)));
    const width = own[0]!.length;
    if (own.some((list) => list.length !== width)) continue;
    for (let k = 0; k < width; k += 1) {
      const set = new Set(own.map((list) => list[k]!));
      if (set.size > 1) found.set([...set].sort().join(' '), set);
    }
  }
  return [...found.values()];
}
