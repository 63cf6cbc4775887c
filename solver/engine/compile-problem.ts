/** Turns a problem into flat arrays and indices. */
import type { Arc, Compiled, CompiledMode, CompiledTier, CompiledUse } from './compiled.ts';
import { ConditionTable } from './conditions.ts';
import type { Mode, Point, Problem, Task, Use } from './problem.ts';
import { SoilMarks } from './soil-marks.ts';
import { emptyLists, packLists, placesOf, type SparseLists } from './sparse-lists.ts';

const NONE: readonly string[] = [];

/** Tasks read between two questions whether to go on. */
const BETWEEN = 64;

/** Compiles a problem that `validateProblem` accepts. */
export function compileProblem(problem: Problem): Compiled;
/** The same, asking now and then whether to go on. @returns null where the answer was no */
export function compileProblem(problem: Problem, goOn: () => boolean): Compiled | null;
export function compileProblem(problem: Problem, goOn: () => boolean = () => true): Compiled | null {
  return new Compiler(problem, goOn).run();
}

/** Marks by number, each once and ascending. */
interface MarkList {
  readonly marks: readonly number[];
}

const NO_MARKS: MarkList = { marks: [] };

class Compiler {
  private readonly table: ConditionTable;
  private readonly taskIndex: ReadonlyMap<string, number>;
  private readonly choiceIndex: ReadonlyMap<string, number>;
  private readonly resourceIndex: ReadonlyMap<string, number>;
  private readonly stateIndex: ReadonlyMap<string, number>;
  private readonly modes: CompiledMode[] = [];
  /** Lists of marks by what they say and, since many uses share one, by themselves. */
  private readonly markLists = new Map<string, MarkList>();
  private readonly knownLists = new Map<readonly string[], MarkList>();
  private readonly marks = new Map<string, number>();
  /** By list of marks left: soils by list of marks avoided. */
  private readonly soils = new Map<MarkList, Map<MarkList, number>>();
  private readonly soilMarks: { leaves: MarkList; avoids: MarkList }[] = [{ leaves: NO_MARKS, avoids: NO_MARKS }];
  /** Lists of one use, by resource: most modes have one use, and most of a resource are alike. */
  private readonly knownUses: CompiledUse[][][];
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
    this.knownUses = problem.resources.map(() => []);
    this.presence = Int32Array.from(problem.tasks, (task) => this.presenceOf(task));
  }

  run(): Compiled | null {
    const { problem, table } = this;
    // The modes of a task are numbered one after the other.
    const firstMode = new Int32Array(problem.tasks.length + 1);
    const optionMode: number[][] = [];
    for (const [i, task] of problem.tasks.entries()) {
      if (i % BETWEEN === 0 && !this.goOn()) return null;
      const first = this.modes.length;
      const options = task.modes.map((mode) => (mode === null ? -1 : this.mode(i, mode, first)));
      optionMode.push(options);
      firstMode[i + 1] = this.modes.length;
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
    const soilMeets = this.soilMeets();
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
      modes: this.modes,
      taskModes: { start: firstMode, items: Int32Array.from({ length: this.modes.length }, (_, mode) => mode) },
      optionMode: packLists(optionMode),
      modeOptions: this.modeOptions(optionMode),
      arcs,
      capacity: this.capacity(),
      resourceTasks: packLists(resourceTasks),
      soilMarks: new SoilMarks(this.modes, problem.resources.length, soilMeets, soilCount),
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

  /** Soil by soil, 1 where the first leaves what the second avoids. */
  private soilMeets(): Uint8Array {
    const { soilMarks } = this;
    const avoiders = emptyLists(this.marks.size);
    soilMarks.forEach(({ avoids }, soil) => {
      for (const mark of avoids.marks) avoiders[mark]?.push(soil);
    });
    const meets = new Uint8Array(soilMarks.length ** 2);
    soilMarks.forEach(({ leaves }, soil) => {
      for (const mark of leaves.marks)
        for (const avoider of avoiders[mark] as number[]) meets[soil * soilMarks.length + avoider] = 1;
    });
    return meets;
  }

  private modeOptions(optionMode: readonly (readonly number[])[]): SparseLists {
    const none = this.modes.length;
    const modes: number[] = [];
    const options: number[] = [];
    for (const ofTask of optionMode)
      ofTask.forEach((mode, option) => {
        modes.push(mode < 0 ? none : mode);
        options.push(option);
      });
    const { start, items } = placesOf(none + 1, modes);
    return { start, items: items.map((place) => options[place] as number) };
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

  /** The number of a mode of the task; those of its modes already known begin at `first`. */
  private mode(task: number, mode: Mode, first: number): number {
    const compiled: CompiledMode = {
      task,
      shortest: whole(mode.shortest),
      longest: whole(Math.min(mode.longest, this.problem.horizon)),
      uses: this.usesOf(mode),
      state: mode.state === undefined ? -1 : (this.stateIndex.get(mode.state.state) ?? -1),
      stateClass: whole(mode.state?.class ?? 0),
      costFixed: whole(mode.cost?.fixed ?? 0),
      costPerMinute: whole(mode.cost?.perMinute ?? 0),
    };
    for (let known = first; known < this.modes.length; known++)
      if (isSameMode(this.modes[known] as CompiledMode, compiled)) return known;
    return this.modes.push(compiled) - 1;
  }

  /** The uses of a mode by resource; several of one resource are put together. */
  private usesOf(mode: Mode): readonly CompiledUse[] {
    if (mode.uses.length === 1) return this.onlyUse(mode.uses[0] as Use);
    const uses: CompiledUse[] = [];
    for (const use of mode.uses) {
      const compiled = this.use(use);
      for (const { resource } of uses) if (resource === compiled.resource) return this.usesTogether(mode);
      uses.push(compiled);
    }
    return uses.length < 2 ? uses : uses.sort((a, b) => a.resource - b.resource);
  }

  private use(use: Use): CompiledUse {
    const resource = this.resourceIndex.get(use.resource) ?? -1;
    const soil = this.soil(use.leaves ?? NONE, use.avoids ?? NONE);
    return { resource, amount: whole(use.amount), soil, cleans: use.cleans === true };
  }

  /** The list of this use alone, made when it is new. */
  private onlyUse(use: Use): readonly CompiledUse[] {
    const resource = this.resourceIndex.get(use.resource) ?? -1;
    const soil = this.soil(use.leaves ?? NONE, use.avoids ?? NONE);
    const cleans = use.cleans === true;
    const lists = this.knownUses[resource] as CompiledUse[][];
    for (const list of lists) {
      const known = list[0] as CompiledUse;
      if (known.amount === use.amount && known.soil === soil && known.cleans === cleans) return list;
    }
    const list = [{ resource, amount: whole(use.amount), soil, cleans }];
    lists.push(list);
    return list;
  }

  private usesTogether(mode: Mode): readonly CompiledUse[] {
    const resources = mode.uses.map((use) => this.resourceIndex.get(use.resource) ?? -1);
    const order = [...new Set(resources)].sort((a, b) => a - b);
    return order.map((resource) => {
      const uses = mode.uses.filter((_, index) => resources[index] === resource);
      const marks = (of: 'leaves' | 'avoids'): readonly string[] => [
        ...new Set(uses.flatMap((use) => use[of] ?? NONE)),
      ];
      return {
        resource,
        amount: whole(uses.reduce((sum, use) => sum + use.amount, 0)),
        soil: this.soil(marks('leaves'), marks('avoids')),
        cleans: uses.some((use) => use.cleans === true),
      };
    });
  }

  private soil(leaves: readonly string[], avoids: readonly string[]): number {
    if (leaves.length + avoids.length === 0) return 0;
    const left = this.listOf(leaves);
    const avoided = this.listOf(avoids);
    const byAvoided = this.soils.get(left) ?? new Map<MarkList, number>();
    this.soils.set(left, byAvoided);
    const known = byAvoided.get(avoided);
    if (known !== undefined) return known;
    const soil = this.soilMarks.push({ leaves: left, avoids: avoided }) - 1;
    byAvoided.set(avoided, soil);
    return soil;
  }

  /** The marks of a list; the same for all lists that say the same. */
  private listOf(list: readonly string[]): MarkList {
    if (list.length === 0) return NO_MARKS;
    const known = this.knownLists.get(list);
    if (known !== undefined) return known;
    const sorted = list.map((mark) => indexOf(this.marks, mark)).sort((a, b) => a - b);
    const marks = sorted.filter((mark, k) => mark !== sorted[k - 1]);
    const key = marks.join(',');
    const same = this.markLists.get(key) ?? { marks };
    this.markLists.set(key, same);
    this.knownLists.set(list, same);
    return same;
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

/** Whether two modes of one task are the same in all that counts. */
function isSameMode(a: CompiledMode, b: CompiledMode): boolean {
  if (a.shortest !== b.shortest || a.longest !== b.longest || a.uses.length !== b.uses.length) return false;
  if (a.state !== b.state || a.stateClass !== b.stateClass) return false;
  if (a.costFixed !== b.costFixed || a.costPerMinute !== b.costPerMinute) return false;
  // Of one use alone there is one list for all that are alike.
  if (a.uses.length === 1) return a.uses === b.uses;
  return a.uses.every(({ resource, amount, soil, cleans }, k) => {
    const other = b.uses[k] as CompiledUse;
    return resource === other.resource && amount === other.amount && soil === other.soil && cleans === other.cleans;
  });
}

/**
 * A whole number of 32 bits in the form that compiled code keeps such in. A number that came out of a division or as −0 equals it but is kept
 * as a float, and one float among the whole numbers of all objects of a kind has the machine compile anew whatever reads them.
 */
function whole(value: number): number {
  return value | 0;
}

function indexOf(map: Map<string, number>, key: string): number {
  const known = map.get(key);
  if (known !== undefined) return known;
  map.set(key, map.size);
  return map.size - 1;
}
