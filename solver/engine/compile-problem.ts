/** Turns a problem into flat arrays and indices. */
import type { Arc, Compiled, CompiledTier } from './compiled.ts';
import { ModeReader } from './compile-modes.ts';
import { ConditionTable } from './conditions.ts';
import type { Point, Problem, Task } from './problem.ts';
import { SoilMarks } from './soil-marks.ts';
import { emptyLists, packLists } from './sparse-lists.ts';
import { whole } from './whole.ts';

/** Tasks read between two questions whether to go on. */
const BETWEEN = 64;

/** Compiles a problem that `validateProblem` accepts. */
export function compileProblem(problem: Problem): Compiled;
/** The same, asking now and then whether to go on. @returns null where the answer was no */
export function compileProblem(problem: Problem, goOn: () => boolean): Compiled | null;
export function compileProblem(problem: Problem, goOn: () => boolean = () => true): Compiled | null {
  return new Compiler(problem, goOn).run();
}

class Compiler {
  private readonly table: ConditionTable;
  private readonly taskIndex: ReadonlyMap<string, number>;
  private readonly choiceIndex: ReadonlyMap<string, number>;
  private readonly resourceIndex: ReadonlyMap<string, number>;
  private readonly presence: Int32Array;

  constructor(
    private readonly problem: Problem,
    private readonly goOn: () => boolean,
  ) {
    const index = (list: readonly { readonly id: string }[]): Map<string, number> =>
      new Map(list.map((item, i) => [item.id, i]));
    this.table = new ConditionTable(problem);
    this.taskIndex = index(problem.tasks);
    this.choiceIndex = index(problem.choices);
    this.resourceIndex = index(problem.resources);
    this.presence = Int32Array.from(problem.tasks, (task) => this.presenceOf(task));
  }

  run(): Compiled | null {
    const { problem, table } = this;
    const reader = new ModeReader(problem);
    for (const [i, task] of problem.tasks.entries()) {
      if (i % BETWEEN === 0 && !this.goOn()) return null;
      reader.read(i, task.modes);
    }
    const { modes, taskModes, optionMode, modeOptions, soilCount, soilMeets } = reader.all();
    const resourceTasks = emptyLists(problem.resources.length);
    const cleaningTasks = emptyLists(problem.resources.length);
    const stateTasks = emptyLists(problem.states.length);
    for (const mode of modes) {
      for (const use of mode.uses) {
        if (use.amount > 0) addOnce(resourceTasks[use.resource], mode.task);
        if (use.cleans) addOnce(cleaningTasks[use.resource], mode.task);
      }
      if (mode.state >= 0) addOnce(stateTasks[mode.state], mode.task);
    }
    const arcs = this.goOn() ? this.arcs() : null;
    if (arcs === null) return null;
    const groups = new Map<string, number>();
    const compiled: Compiled = {
      problem,
      horizon: whole(problem.horizon),
      taskCount: problem.tasks.length,
      origin: 2 * problem.tasks.length,
      optionCount: Int32Array.from(problem.choices, (choice) => choice.options.length),
      table,
      presence: this.presence,
      taskChoice: Int32Array.from(problem.tasks, (task) =>
        task.choice === undefined ? -1 : (this.choiceIndex.get(task.choice) ?? -1),
      ),
      modes,
      taskModes,
      optionMode,
      modeOptions,
      arcs,
      capacity: this.capacity(),
      resourceTasks: packLists(resourceTasks),
      soilMarks: new SoilMarks(modes, problem.resources.length, soilMeets, soilCount),
      cleaningTasks: packLists(cleaningTasks),
      soilCount,
      soilMeets,
      stateTasks: packLists(stateTasks),
      gaps: problem.states.map((state) => Int32Array.from(state.gap.flat(), (gap) => gap ?? -1)),
      classCount: Int32Array.from(problem.states, (state) => state.classes.length),
      reservoirs: problem.reservoirs.map((reservoir) => ({
        initial: whole(reservoir.initial),
        capacity: whole(reservoir.capacity ?? 2 ** 31 - 1),
        events: reservoir.events.map((event) => ({
          node: this.node(event.point),
          amount: whole(event.amount),
          condition: table.and(table.of(event.if), this.presenceAt(event.point)),
        })),
      })),
      forbidden: problem.forbidden.map((conjunction) => table.of(conjunction)),
      totals: problem.totals.map((total) => ({
        tasks: total.tasks.map((id) => this.taskIndex.get(id) ?? -1),
        total: whole(total.total),
        condition: table.of(total.if),
      })),
      tiers: problem.tiers.map((tier): CompiledTier => {
        switch (tier.kind) {
          case 'latest':
            return {
              kind: 'latest',
              terms: tier.terms.map((term) => ({
                node: this.node(term.point),
                plus: whole(term.plus ?? 0),
                minus: term.minus === true,
              })),
            };
          case 'waiting':
            return {
              kind: 'waiting',
              terms: tier.terms.map((term) => ({
                weight: whole(term.weight),
                from: this.node(term.from),
                to: this.node(term.to),
                free: whole(term.free),
              })),
            };
          case 'cost':
            return { kind: 'cost' };
          case 'changes':
            return { kind: 'changes', resources: tier.resources.map((id) => this.resourceIndex.get(id) ?? -1) };
        }
      }),
      group: Int32Array.from(problem.tasks, (task) => indexOf(groups, task.group ?? '')),
    };
    return compiled;
  }

  private presenceOf(task: Task): number {
    const when = this.table.of(task.when);
    // A task that is there under every option hangs on none.
    if (task.choice === undefined || !task.modes.includes(null)) return when;
    const options = task.modes.flatMap((mode, option) => (mode === null ? [] : [option]));
    const taken = this.table.ofChoiceLiterals([{ choice: this.choiceIndex.get(task.choice) ?? -1, options }]);
    return this.table.and(when, taken);
  }

  private node(point: Point): number {
    if (point === 'origin') return 2 * this.problem.tasks.length;
    return 2 * (this.taskIndex.get(point.task) ?? -1) + (point.at === 'start' ? 0 : 1);
  }

  private presenceAt(point: Point): number {
    return point === 'origin' ? 0 : (this.presence[this.taskIndex.get(point.task) ?? -1] ?? 0);
  }

  private arcs(): Arc[] {
    return this.problem.lags.map((lag, index) => {
      const asked = this.table.of(lag.if);
      const from = this.node(lag.from);
      const to = this.node(lag.to);
      const atFrom = this.presence[from >> 1] ?? 0;
      const atTo = this.presence[to >> 1] ?? 0;
      return {
        from,
        to,
        least: whole(lag.least),
        asked,
        all: this.table.and(asked, atFrom, atTo),
        low: this.table.without(this.table.and(asked, atFrom), atTo),
        high: this.table.without(this.table.and(asked, atTo), atFrom),
        lag: index,
      };
    });
  }

  private capacity(): Int32Array {
    const { resources, horizon } = this.problem;
    const capacity = new Int32Array(resources.length * horizon);
    resources.forEach((resource, r) => {
      capacity.fill(resource.capacity, r * horizon, (r + 1) * horizon);
      for (const entry of resource.calendar ?? []) {
        const from = Math.min(horizon, Math.max(0, entry.from));
        const until = Math.min(horizon, Math.max(0, entry.until));
        capacity.fill(entry.capacity, r * horizon + from, r * horizon + until);
      }
    });
    return capacity;
  }
}

/** Adds what the list has not got; equal items come one after the other. */
function addOnce(list: number[] | undefined, item: number): void {
  if (list !== undefined && list[list.length - 1] !== item) list.push(item);
}

function indexOf(map: Map<string, number>, key: string): number {
  const known = map.get(key);
  if (known !== undefined) return known;
  map.set(key, map.size);
  return map.size - 1;
}
