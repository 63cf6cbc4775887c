/** Finds what is wrong with a problem itself, before any search: all faults at once, each with its place. */
import type { Literal, Mode, Point, Problem, Task } from './problem.ts';
import { largestCosts, largestLengths, sumsOfAmounts } from './validate-sums.ts';

/** One fault: where (a path such as `tasks[3].modes[0].shortest`), what was found and what is wanted. */
export interface Fault {
  readonly path: string;
  readonly found: string;
  readonly wanted: string;
}

/** Thrown for a problem that is not one; `faults` has every fault found, in the order of the document. */
export class ProblemFault extends Error {
  readonly faults: readonly Fault[];
  constructor(faults: readonly Fault[]) {
    super(faults.map((fault) => `${fault.path}: found ${fault.found}, wanted ${fault.wanted}`).join('\n'));
    this.name = 'ProblemFault';
    this.faults = faults;
  }
}

/** A path, or how to write it: a large problem has many places and seldom a fault. */
type Path = string | (() => string);
const written = (path: Path): string => (typeof path === 'string' ? path : path());

/** Every sum that the engine forms stays below this. */
const OVERFLOW = 2 ** 31;

/**
 * Checks ids, references, ranges and sums of a problem.
 *
 * @param problem any value of the type `Problem`, as read from a document
 * @throws ProblemFault with all faults, when there is at least one
 */
export function validateProblem(problem: Problem): void {
  const faults = new Validator(problem).run();
  if (faults.length > 0) throw new ProblemFault(faults);
}

class Validator {
  private readonly faults: Fault[] = [];
  private readonly optionCount = new Map<string, number>();
  private readonly taskIds = new Set<string>();
  private readonly resourceIds = new Set<string>();
  private readonly classCount = new Map<string, number>();
  /** Lists of modes found without a fault: many tasks of a large problem share one. */
  private readonly sound = new Set<Task['modes']>();

  constructor(private readonly problem: Problem) {}

  run(): Fault[] {
    const { problem } = this;
    this.within('horizon', problem.horizon, 1, 100_000);
    this.indexIds();
    problem.choices.forEach((choice, i) => {
      if (choice.options.length === 0) this.fault(`choices[${i}].options`, 'no option', 'at least one');
    });
    this.resources();
    this.states();
    problem.tasks.forEach((_, i) => this.task(i));
    this.lags();
    this.reservoirs();
    problem.forbidden.forEach((conjunction, i) => {
      if (conjunction.length === 0) this.fault(`forbidden[${i}]`, 'an empty conjunction', 'at least one literal');
      this.literals(`forbidden[${i}]`, conjunction);
    });
    problem.totals.forEach((total, i) => {
      total.tasks.forEach((id, k) => this.known(`totals[${i}].tasks[${k}]`, id, this.taskIds, 'a task'));
      if (new Set(total.tasks).size !== total.tasks.length)
        this.fault(`totals[${i}].tasks`, 'a task named twice', 'each once');
      this.within(`totals[${i}].total`, total.total, 0, OVERFLOW - 1);
      this.literals(`totals[${i}].if`, total.if);
    });
    this.tiers();
    return this.faults;
  }

  private fault(path: string, found: string, wanted: string): void {
    this.faults.push({ path, found, wanted });
  }

  private within(path: Path, value: number, least: number, most: number): void {
    if (!isWithin(value, least, most)) this.fault(written(path), String(value), `an integer from ${least} to ${most}`);
  }

  private known(path: Path, id: string, ids: { has(id: string): boolean }, what: string): void {
    if (!ids.has(id)) this.fault(written(path), `'${id}'`, `the id of ${what}`);
  }

  private sum(path: string, values: Iterable<number>): void {
    let total = 0;
    for (const value of values) total += Math.abs(value);
    if (!(total < OVERFLOW)) this.fault(path, `a sum of ${total}`, 'sums below 2^31');
  }

  private indexIds(): void {
    const unique = (list: string, items: readonly { readonly id: string }[]): void => {
      const seen = new Set<string>();
      items.forEach((item, i) => {
        if (seen.has(item.id)) this.fault(`${list}[${i}].id`, `'${item.id}' again`, 'an id used once');
        seen.add(item.id);
      });
    };
    const { choices, tasks, resources, states, reservoirs, tiers } = this.problem;
    for (const [name, list] of Object.entries({ choices, tasks, resources, states, reservoirs, tiers }))
      unique(name, list);
    for (const choice of choices) this.optionCount.set(choice.id, choice.options.length);
    for (const task of tasks) this.taskIds.add(task.id);
    for (const resource of resources) this.resourceIds.add(resource.id);
    for (const state of states) this.classCount.set(state.id, state.classes.length);
  }

  private literals(path: Path, literals: readonly Literal[] | undefined): void {
    literals?.forEach((literal, i) => {
      const count = this.optionCount.get(literal.choice);
      if (count === undefined) this.fault(`${written(path)}[${i}].choice`, `'${literal.choice}'`, 'the id of a choice');
      else
        literal.options.forEach((option, k) =>
          this.within(() => `${written(path)}[${i}].options[${k}]`, option, 0, count - 1),
        );
    });
  }

  private point(path: Path, point: Point): void {
    if (point !== 'origin') this.known(() => `${written(path)}.task`, point.task, this.taskIds, 'a task');
  }

  private resources(): void {
    const sums = sumsOfAmounts(this.problem.tasks);
    this.problem.resources.forEach((resource, i) => {
      const path = `resources[${i}]`;
      this.within(`${path}.capacity`, resource.capacity, 0, OVERFLOW - 1);
      let before = -Infinity;
      (resource.calendar ?? []).forEach((entry, k) => {
        this.within(`${path}.calendar[${k}].capacity`, entry.capacity, 0, OVERFLOW - 1);
        const { from, until } = entry;
        if (!Number.isInteger(from) || !Number.isInteger(until) || from >= until)
          this.fault(`${path}.calendar[${k}]`, `from ${from} until ${until}`, 'integers, from before until');
        if (from < before) this.fault(`${path}.calendar[${k}].from`, `${from}`, `no earlier than ${before}`);
        before = until;
      });
      this.sum(`${path}, amounts`, [sums.get(resource.id) ?? 0]);
    });
  }

  private states(): void {
    this.problem.states.forEach((state, i) => {
      const count = state.classes.length;
      if (state.gap.length !== count || state.gap.some((row) => row.length !== count)) {
        this.fault(`states[${i}].gap`, 'another size', `${count} rows of ${count}`);
        return;
      }
      state.gap.forEach((row, a) =>
        row.forEach((gap, b) => {
          const path = `states[${i}].gap[${a}][${b}]`;
          if (gap !== null) this.within(path, gap, 0, OVERFLOW / 2);
          if ((gap === null) !== ((state.gap[b]?.[a] ?? null) === null))
            this.fault(path, String(gap), 'null exactly where the reverse is null');
          if (a === b && gap !== null) this.fault(path, String(gap), 'null within one class');
        }),
      );
    });
  }

  private task(index: number): void {
    const task = this.problem.tasks[index];
    if (task === undefined) return;
    const path = `tasks[${index}]`;
    this.literals(`${path}.when`, task.when);
    const options = task.choice === undefined ? 1 : this.optionCount.get(task.choice);
    if (options === undefined) this.fault(`${path}.choice`, `'${task.choice}'`, 'the id of a choice');
    else if (task.modes.length !== options) this.fault(`${path}.modes`, `${task.modes.length}`, `${options} modes`);
    if (task.choice === undefined && task.modes[0] === null)
      this.fault(`${path}.modes[0]`, 'null', 'a mode, since there is no choice');
    if (this.sound.has(task.modes)) return;
    const before = this.faults.length;
    task.modes.forEach((mode, k) => {
      if (mode !== null) this.mode(() => `${path}.modes[${k}]`, mode);
    });
    if (this.faults.length === before) this.sound.add(task.modes);
  }

  private mode(path: Path, mode: Mode): void {
    // Looked at before a path is even thought of: a large problem has tens of thousands of modes.
    if (!isWithin(mode.shortest, 0, OVERFLOW - 1) || !isWithin(mode.longest, 0, OVERFLOW - 1)) {
      this.within(() => `${written(path)}.shortest`, mode.shortest, 0, OVERFLOW - 1);
      this.within(() => `${written(path)}.longest`, mode.longest, 0, OVERFLOW - 1);
    }
    if (mode.longest < mode.shortest)
      this.fault(`${written(path)}.longest`, String(mode.longest), `at least the shortest, ${mode.shortest}`);
    mode.uses.forEach((use, i) => {
      if (this.resourceIds.has(use.resource) && isWithin(use.amount, 0, OVERFLOW - 1)) return;
      this.known(() => `${written(path)}.uses[${i}].resource`, use.resource, this.resourceIds, 'a resource');
      this.within(() => `${written(path)}.uses[${i}].amount`, use.amount, 0, OVERFLOW - 1);
    });
    if (mode.state !== undefined) {
      const count = this.classCount.get(mode.state.state);
      if (count === undefined) this.fault(`${written(path)}.state.state`, `'${mode.state.state}'`, 'the id of a state');
      else this.within(() => `${written(path)}.state.class`, mode.state.class, 0, count - 1);
    }
    if (mode.cost !== undefined) {
      this.within(() => `${written(path)}.cost.fixed`, mode.cost.fixed, 1 - OVERFLOW, OVERFLOW - 1);
      this.within(() => `${written(path)}.cost.perMinute`, mode.cost.perMinute, 1 - OVERFLOW, OVERFLOW - 1);
    }
  }

  private lags(): void {
    this.problem.lags.forEach((lag, i) => {
      this.point(() => `lags[${i}].from`, lag.from);
      this.point(() => `lags[${i}].to`, lag.to);
      this.within(() => `lags[${i}].least`, lag.least, 1 - OVERFLOW, OVERFLOW - 1);
      this.literals(() => `lags[${i}].if`, lag.if);
    });
    // A walk in the graph of lags visits each endpoint once, so this bounds every distance.
    this.sum(
      'lags',
      this.problem.lags.map((lag) => lag.least),
    );
    this.sum('tasks, shortest', largestLengths(this.problem.tasks));
  }

  private reservoirs(): void {
    this.problem.reservoirs.forEach((reservoir, i) => {
      const path = `reservoirs[${i}]`;
      this.within(`${path}.initial`, reservoir.initial, 0, OVERFLOW - 1);
      if (reservoir.capacity !== undefined) this.within(`${path}.capacity`, reservoir.capacity, 0, OVERFLOW - 1);
      reservoir.events.forEach((event, k) => {
        this.point(`${path}.events[${k}].point`, event.point);
        this.within(`${path}.events[${k}].amount`, event.amount, 1 - OVERFLOW, OVERFLOW - 1);
        this.literals(`${path}.events[${k}].if`, event.if);
      });
      this.sum(`${path}, amounts`, [reservoir.initial, ...reservoir.events.map((event) => event.amount)]);
    });
  }

  private tiers(): void {
    const { horizon, tasks } = this.problem;
    this.problem.tiers.forEach((tier, i) => {
      const path = `tiers[${i}]`;
      switch (tier.kind) {
        case 'latest':
          tier.terms.forEach((term, k) => {
            this.point(`${path}.terms[${k}].point`, term.point);
            const most = OVERFLOW - 1 - horizon;
            if (term.plus !== undefined) this.within(`${path}.terms[${k}].plus`, term.plus, -most, most);
          });
          return;
        case 'waiting':
          tier.terms.forEach((term, k) => {
            this.point(`${path}.terms[${k}].from`, term.from);
            this.point(`${path}.terms[${k}].to`, term.to);
            this.within(`${path}.terms[${k}].weight`, term.weight, 0, OVERFLOW - 1);
            this.within(`${path}.terms[${k}].free`, term.free, 1 - OVERFLOW, OVERFLOW - 1);
          });
          this.sum(
            `${path}, weights`,
            tier.terms.map((term) => term.weight * Math.max(0, horizon - term.free)),
          );
          return;
        case 'cost':
          this.sum(`${path}, costs`, largestCosts(tasks, horizon));
          return;
        case 'changes':
          tier.resources.forEach((id, k) => this.known(`${path}.resources[${k}]`, id, this.resourceIds, 'a resource'));
          return;
      }
    });
  }
}

function isWithin(value: number, least: number, most: number): boolean {
  return Number.isInteger(value) && value >= least && value <= most;
}
