/** Turns a problem into flat arrays and indices. */
import type { Arc, Compiled, CompiledMode, CompiledTier, CompiledUse } from './compiled.ts';
import { ConditionTable } from './conditions.ts';
import type { Mode, Point, Problem, Task } from './problem.ts';
import { emptyLists, packLists, type SparseLists } from './sparse-lists.ts';

const NONE: readonly string[] = [];

/** Pairs of modes of which one soils the other, listed by one of them; the pairs of one resource follow each other. */
interface SoilPairs {
  readonly modes: SparseLists;
  /** By place in `modes.items`: on which resource. */
  readonly resources: Int32Array;
}

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
  private readonly stateIndex: ReadonlyMap<string, number>;
  private readonly modes: CompiledMode[] = [];
  private readonly soils = new Map<string, number>([['|', 0]]);
  private readonly marks = new Map<string, number>();
  private readonly soilMarks: { leaves: readonly string[]; avoids: readonly string[] }[] = [{ leaves: [], avoids: [] }];
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
    this.stateIndex = index(problem.states);
    this.presence = Int32Array.from(problem.tasks, (task) => this.presenceOf(task));
  }

  run(): Compiled | null {
    const { problem, table } = this;
    const taskModes: number[][] = [];
    const optionMode: number[][] = [];
    for (const [i, task] of problem.tasks.entries()) {
      if (i % BETWEEN === 0 && !this.goOn()) return null;
      const known = new Map<string, number>();
      const options = task.modes.map((mode) => (mode === null ? -1 : this.mode(i, mode, known)));
      optionMode.push(options);
      taskModes.push([...known.values()]);
    }
    const resourceTasks = emptyLists(problem.resources.length);
    const cleaningTasks = emptyLists(problem.resources.length);
    const stateTasks = emptyLists(problem.states.length);
    for (const mode of this.modes) {
      for (const use of mode.uses) {
        if (use.amount > 0) addOnce(resourceTasks[use.resource], mode.task);
        if (use.cleans) addOnce(cleaningTasks[use.resource], mode.task);
      }
      if (mode.state >= 0) addOnce(stateTasks[mode.state], mode.task);
    }
    const soilCount = this.soilMarks.length;
    const soilMeets = new Uint8Array(soilCount * soilCount);
    this.soilMarks.forEach((u, a) =>
      this.soilMarks.forEach((v, b) => {
        if (u.leaves.some((mark) => v.avoids.includes(mark))) soilMeets[a * soilCount + b] = 1;
      }),
    );
    const { soils, soiledBy } = this.soilPairs(soilMeets, soilCount);
    const arcs = this.goOn() ? this.arcs() : null;
    if (arcs === null) return null;
    const groups = new Map<string, number>();
    const compiled: Compiled = {
      problem,
      horizon: problem.horizon,
      taskCount: problem.tasks.length,
      origin: 2 * problem.tasks.length,
      optionCount: Int32Array.from(problem.choices, (choice) => choice.options.length),
      table,
      presence: this.presence,
      taskChoice: Int32Array.from(problem.tasks, (task) =>
        task.choice === undefined ? -1 : (this.choiceIndex.get(task.choice) ?? -1),
      ),
      modes: this.modes,
      taskModes: packLists(taskModes),
      optionMode: packLists(optionMode),
      arcs,
      capacity: this.capacity(),
      resourceTasks: packLists(resourceTasks),
      soils: soils.modes,
      soilsResource: soils.resources,
      soiledBy: soiledBy.modes,
      soiledByResource: soiledBy.resources,
      cleaningTasks: packLists(cleaningTasks),
      soilCount,
      soilMeets,
      stateTasks: packLists(stateTasks),
      gaps: problem.states.map((state) => Int32Array.from(state.gap.flat(), (gap) => gap ?? -1)),
      classCount: Int32Array.from(problem.states, (state) => state.classes.length),
      reservoirs: problem.reservoirs.map((reservoir) => ({
        initial: reservoir.initial,
        capacity: reservoir.capacity ?? 2 ** 31 - 1,
        events: reservoir.events.map((event) => ({
          node: this.node(event.point),
          amount: event.amount,
          condition: table.and(table.of(event.if), this.presenceAt(event.point)),
        })),
      })),
      forbidden: problem.forbidden.map((conjunction) => table.of(conjunction)),
      totals: problem.totals.map((total) => ({
        tasks: total.tasks.map((id) => this.taskIndex.get(id) ?? -1),
        total: total.total,
        condition: table.of(total.if),
      })),
      tiers: problem.tiers.map((tier): CompiledTier => {
        switch (tier.kind) {
          case 'latest':
            return {
              kind: 'latest',
              terms: tier.terms.map((term) => ({
                node: this.node(term.point),
                plus: term.plus ?? 0,
                minus: term.minus === true,
              })),
            };
          case 'waiting':
            return {
              kind: 'waiting',
              terms: tier.terms.map((term) => ({
                weight: term.weight,
                from: this.node(term.from),
                to: this.node(term.to),
                free: term.free,
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
    if (task.choice === undefined) return when;
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

  private mode(task: number, mode: Mode, known: Map<string, number>): number {
    const uses = this.usesOf(mode);
    const compiled: CompiledMode = {
      task,
      shortest: mode.shortest,
      longest: Math.min(mode.longest, this.problem.horizon),
      uses,
      state: mode.state === undefined ? -1 : (this.stateIndex.get(mode.state.state) ?? -1),
      stateClass: mode.state?.class ?? 0,
      costFixed: mode.cost?.fixed ?? 0,
      costPerMinute: mode.cost?.perMinute ?? 0,
    };
    let key = `${compiled.shortest} ${compiled.longest} ${compiled.state} ${compiled.stateClass} ${compiled.costFixed} ${compiled.costPerMinute}`;
    for (const use of uses) key += ` ${use.resource} ${use.amount} ${use.soil} ${use.cleans}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    this.modes.push(compiled);
    known.set(key, this.modes.length - 1);
    return this.modes.length - 1;
  }

  /** The uses of a mode by resource; several of one resource are put together. */
  private usesOf(mode: Mode): CompiledUse[] {
    const resources = mode.uses.map((use) => this.resourceIndex.get(use.resource) ?? -1);
    const order = [...new Set(resources)].sort((a, b) => a - b);
    return order.map((resource) => {
      const uses = mode.uses.filter((_, index) => resources[index] === resource);
      const marks = (of: 'leaves' | 'avoids'): readonly string[] => {
        const first = uses[0]?.[of] ?? NONE;
        return uses.length === 1 ? first : [...new Set(uses.flatMap((use) => use[of] ?? NONE))];
      };
      return {
        resource,
        amount: uses.reduce((sum, use) => sum + use.amount, 0),
        soil: this.soil(marks('leaves'), marks('avoids')),
        cleans: uses.some((use) => use.cleans === true),
      };
    });
  }

  private soil(leaves: readonly string[], avoids: readonly string[]): number {
    if (leaves.length + avoids.length === 0) return 0;
    const sets = [leaves, avoids].map((marks) => [...new Set(marks)].sort());
    const key = sets.map((marks) => marks.map((mark) => indexOf(this.marks, mark)).join(',')).join('|');
    if (!this.soils.has(key)) this.soilMarks.push({ leaves: sets[0] ?? NONE, avoids: sets[1] ?? NONE });
    return indexOf(this.soils, key);
  }

  /** There are many pairs: they are counted first and then written in place. */
  private soilPairs(meets: Uint8Array, count: number): { soils: SoilPairs; soiledBy: SoilPairs } {
    const { modes } = this;
    const users = this.problem.resources.map((): { mode: number; task: number; soil: number }[] => []);
    modes.forEach((mode, index) => {
      for (const use of mode.uses)
        if (use.soil > 0) users[use.resource]?.push({ mode: index, task: mode.task, soil: use.soil });
    });
    const eachPair = (visit: (u: number, v: number, resource: number) => void): void =>
      users.forEach((list, resource) => {
        for (const u of list)
          for (const v of list)
            if (meets[u.soil * count + v.soil] !== 0 && u.task !== v.task) visit(u.mode, v.mode, resource);
      });
    const soils = new Int32Array(modes.length + 1);
    const soiledBy = new Int32Array(modes.length + 1);
    eachPair((u, v) => {
      soils[u + 1] = (soils[u + 1] as number) + 1;
      soiledBy[v + 1] = (soiledBy[v + 1] as number) + 1;
    });
    for (let mode = 0; mode < modes.length; mode++) {
      soils[mode + 1] = (soils[mode + 1] as number) + (soils[mode] as number);
      soiledBy[mode + 1] = (soiledBy[mode + 1] as number) + (soiledBy[mode] as number);
    }
    const made = (start: Int32Array): SoilPairs & { readonly next: Int32Array } => {
      const size = start[modes.length] as number;
      return { modes: { start, items: new Int32Array(size) }, resources: new Int32Array(size), next: start.slice() };
    };
    const forth = made(soils);
    const back = made(soiledBy);
    const write = (pairs: typeof forth, of: number, other: number, resource: number): void => {
      const at = pairs.next[of] as number;
      pairs.next[of] = at + 1;
      pairs.modes.items[at] = other;
      pairs.resources[at] = resource;
    };
    eachPair((u, v, resource) => {
      write(forth, u, v, resource);
      write(back, v, u, resource);
    });
    return { soils: forth, soiledBy: back };
  }

  private arcs(): Arc[] {
    return this.problem.lags.map((lag, index) => {
      const literals = this.table.of(lag.if);
      const from = this.presenceAt(lag.from);
      const to = this.presenceAt(lag.to);
      return {
        from: this.node(lag.from),
        to: this.node(lag.to),
        least: lag.least,
        all: this.table.and(literals, from, to),
        low: this.table.without(this.table.and(literals, from), to),
        high: this.table.without(this.table.and(literals, to), from),
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

function addOnce(list: number[] | undefined, item: number): void {
  if (list !== undefined && !list.includes(item)) list.push(item);
}

function indexOf(map: Map<string, number>, key: string): number {
  const known = map.get(key);
  if (known !== undefined) return known;
  map.set(key, map.size);
  return map.size - 1;
}
